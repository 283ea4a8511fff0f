import { useId, useRef } from "react";
import type { ReadingKey } from "../../../setup/types/asBuiltTypes.ts";
import type { ReadingPass } from "../../../studies/jig/asBuiltReport.ts";
import type { Residual } from "../../../studies/jig/fitKnuckle.ts";
import { AGAIN_FIRST, passOffText, passWord, residualText } from "../../../studies/wording/asBuiltWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { EntryInput } from "../../measure/fields/EntryInput.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import { useField } from "../../state/documentUse.ts";

export type ReadingCellProps = {
  side: "left" | "right";
  reading: ReadingKey | "clampedAt";
  /** Names the field. */
  name: string;
  /** Read the other way than it is kept: behind, where the file says ahead. */
  isTurned: boolean;
  /** null = not read, or nothing is asked of it. */
  pass: ReadingPass | null;
  residual: Residual | null;
  format: LengthFormat;
};

/** One reading of one knuckle: the field it is typed into, and how it stands. Enter goes on to the knuckle's next reading. */
export function ReadingCell({ side, reading, name, isTurned, pass, residual, format }: ReadingCellProps) {
  const id = useId();
  const { text, draft, issue } = useField(["asBuilt", side, reading]);
  const cell = useRef<HTMLDivElement>(null);
  const goOn = () => {
    const table = cell.current?.closest("table");
    const ofKnuckle = [...(table?.querySelectorAll(`[data-field^="asBuilt.${side}."] input`) ?? [])];
    const at = ofKnuckle.findIndex((input) => cell.current?.contains(input));
    const next = ofKnuckle[at + 1] ?? ofKnuckle[at];
    if (!(next instanceof HTMLInputElement)) return;
    next.focus();
    next.select();
  };
  const mend = draft?.mend ?? issue?.mend ?? null;
  const agrees = residual && residualText(residual, format);
  const isUnchecked = pass?.passes === false && residual?.inSigmas === null;
  return (
    <div ref={cell} className="reading-cell" data-field={`asBuilt.${side}.${reading}`}>
      <EntryInput
        path={["asBuilt", side, reading]}
        text={text}
        name={name}
        isOptional
        isTurned={isTurned}
        onEnter={goOn}
        isInvalid={mend !== null}
        describedBy={`${id}-told`}
      />
      <div
        id={`${id}-told`}
        className={mend === null ? "reading-told" : "reading-fault"}
        title={agrees ?? undefined}
      >
        {mend === null ? <PassMark pass={pass} format={format} /> : `✕ ${mend}`}
        {/* Seen under the knuckle's table; a line here would move the rows below while they are typed into. */}
        {mend === null &&
          agrees !== null &&
          (residual?.isSuspect ? (
            <small>{agrees}</small>
          ) : isUnchecked ? (
            <small>{AGAIN_FIRST}</small>
          ) : (
            <span className="sr-only">, {agrees}</span>
          ))}
      </div>
    </div>
  );
}

/** Whether a reading is within its tolerance, with how far it is off: a sign and a word. */
export function PassMark({ pass, format }: { pass: ReadingPass | null; format: LengthFormat }) {
  if (pass === null) return null;
  const { passes } = pass;
  return (
    <span className="reading-pass" data-passes={passes}>
      <StateMark word={passes ? "clear" : "rubs"} />{" "}
      <span className={passes ? "sr-only" : undefined}>{passWord(passes)}</span> {passOffText(pass, format)}
    </span>
  );
}
