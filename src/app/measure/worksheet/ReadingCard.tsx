import { useId } from "react";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { cannotBe, faultAtReading } from "../../../studies/wording/readingsTold.ts";
import { lineWords, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { useField } from "../../state/documentUse.ts";
import { lengthFormat } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldDoubts } from "../fields/FieldDoubts.tsx";
import { FieldFault } from "../fields/FieldFault.tsx";
import { useEntry } from "../fields/useEntry.ts";
import { CardFrame } from "./CardFrame.tsx";
import { Keypad } from "./Keypad.tsx";
import { LineSketch } from "./LineSketch.tsx";
import { RemoveReading } from "./RemoveReading.tsx";
import { useContradicting } from "./useContradicting.ts";
import { useImpossible } from "./useImpossible.ts";

export type ReadingCardProps = {
  state: LineState;
  /** Its place in the list, from 0, and how many there are. */
  index: number;
  count: number;
  /** It is the last, and there is an answer: the way on leads to it. */
  isEnd: boolean;
  /** Where the way on leads back to, as `index`; below 0 = to the next. */
  backTo: number;
  /** What another reading is called, by its place in the file. */
  nameOf: (at: number) => string;
  /** Goes to another card; by Enter it goes no farther than to the way on, however soon there is an answer. */
  onGo: (way: "next" | "previous" | "entered") => void;
  /** Asks for the same reading once more; null = it is a field, which holds one number. */
  onAgain: (() => void) | null;
};

/** One reading: where the tape goes, and the number with big keys to type it. Give it the path as key. */
export function ReadingCard({ state, index, count, isEnd, backTo, nameOf, onGo, onAgain }: ReadingCardProps) {
  const id = useId();
  const { line, ask, path, isRead } = state;
  const { name, how } = lineWords(state);
  const { field, text, draft, issue } = useField(path);
  const isExample = ask === null && !isRead;
  const fileUnits = useWorkbench((s) => fileUnitsOf(s.document));
  const format = useWorkbench(lengthFormat);
  const isText = field?.kind === "text" && ask === null;
  const isAngle = field?.kind === "angle" || (ask !== null && "angle" in ask);
  // What is read goes into the file as typed, in the file's own units.
  const units = ask === null ? format.units : fileUnits;
  const unit = isText ? "" : isAngle ? "°" : units;
  const entry = useEntry({
    path,
    text,
    isOptional: ask !== null,
    isStepped: false,
    // What is typed is read, also where it is just what was assumed.
    onPut: () => ask === null && workbench.getState().claimFields([path]),
    onEnter: () => onGo("entered"),
  });
  // What is assumed is no reading: it stands in the field only faintly.
  const value = isExample && !entry.isTyped && draft === null ? "" : entry.value;
  const out = useImpossible().find(({ at }) => ask !== null && at === path[1]);
  const cannot = out ? cannotBe(out.mend, nameOf) : null;
  const contradiction = useContradicting();
  const isInTheWay = ask !== null && contradiction?.inTheWay.some((at) => at === path[1]);
  const against = isInTheWay ? faultAtReading(contradiction!.issue, workbench.getState().document) : null;
  const mend = isExample && draft === null ? null : (draft?.mend ?? issue?.mend ?? cannot ?? against);
  return (
    <CardFrame
      nameId={`${id}-name`}
      place={line ? worksheetPlaceWords(line.place) : "Also read"}
      index={index}
      count={count}
      isEnd={isEnd}
      backTo={backTo}
      isFilled={isRead || value !== ""}
      onGo={onGo}
      foot={
        <>
          {onAgain && isRead && (
            <button type="button" className="link-button" onClick={onAgain}>
              Read the same once more
            </button>
          )}
          {line === null && ask !== null && <RemoveReading path={path} />}
        </>
      }
    >
      <LineSketch ask={ask} pattern={path.map(String)} name={name} />
      <label id={`${id}-name`} htmlFor={id} className="reading-name">
        {name}
      </label>
      <p id={`${id}-how`} className="reading-how">
        {how}
      </p>
      <div className="reading-entry" data-field={path.join(".")}>
        <input
          id={id}
          className="entry reading-input"
          type="text"
          inputMode={isText ? "text" : "none"}
          autoComplete="off"
          autoCapitalize={isText ? "characters" : "none"}
          spellCheck={false}
          aria-invalid={mend !== null}
          aria-describedby={`${id}-how${mend === null ? "" : ` ${id}-fault`}`}
          value={value}
          placeholder={
            isExample && text !== ""
              ? `assumed ${isText || isAngle ? text : lengthShown(text, format)}`
              : "not read yet"
          }
          onChange={(event) => entry.edit(event.target.value)}
          onBlur={entry.settle}
          onKeyDown={entry.onKeyDown}
        />
        {unit !== "" && <span className="reading-unit">{unit}</span>}
      </div>
      {mend !== null && <FieldFault id={`${id}-fault`} path={path} mend={mend} isDraft={draft !== null} />}
      <FieldDoubts path={path} />
      {!isText && (
        <Keypad
          text={value}
          hasFractions={units === "in" && !isAngle}
          isSigned={isAngle || (ask !== null && "ahead" in ask)}
          onText={entry.edit}
        />
      )}
    </CardFrame>
  );
}

/** A length that was worked out, as a tape shows it, without its unit. */
function lengthShown(text: string, format: LengthFormat): string {
  const read = parseLength(text, format.units);
  return read.ok ? formatLength(read.mm, format).replace(/ (in|mm)$/, "") : text;
}
