import { useMemo, useState } from "react";
import { useStore } from "zustand";
import { solveJson } from "../../../studies/documents/solveJson.ts";
import { SOLVE_TARGETS, type SolveTarget, targetMeasure } from "../../../studies/solve/solveTypes.ts";
import { widerRange } from "../../../studies/solve/widerRange.ts";
import { fieldsToVary } from "../../../studies/window/fieldsToVary.ts";
import type { WindowField } from "../../../studies/window/windowField.ts";
import {
  lookOnText,
  NEAREST_AT_END,
  solveSentences,
  targetName,
} from "../../../studies/wording/solveWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { focusOn } from "../../parts/focusOn.ts";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { useIsBehind } from "../../parts/useSettled.ts";
import { askedOf, shownOf } from "../../state/madeOf.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { type Answered, whyNone } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { FieldChooser } from "./FieldChooser.tsx";
import { fieldEnd, fieldStart } from "./fieldEnds.ts";
import { SolvedActs } from "./SolvedActs.tsx";
import { exactText, heightChoices, isOfPose, startText, targetOf } from "./solveAsked.ts";
import { workedOn, workOn } from "./workedOn.ts";

type Of = SolveTarget["of"];

/** What is typed: null = not typed yet, so that something about the truck's own is shown. */
interface Typed {
  /** null = the field that was worked on last. */
  readonly key: string | null;
  readonly of: Of;
  /** The stance at which a number of a pose is wanted; null = as measured. */
  readonly at: string | null;
  readonly wanted: string | null;
  readonly ends: readonly [from: string, to: string] | null;
}

/** What a truck is mostly asked: how far out its hub face may be for the gap it is to keep. */
const MOSTLY = "knuckle.hubFace";
const START: Typed = { key: null, of: "gap", at: null, wanted: null, ends: null };

/** What was asked last, and of which setup: a panel that is opened again goes on from there. */
let last: { readonly documentId: string; readonly typed: Typed } | null = null;

function startOf(documentId: string): Typed {
  if (last === null) return START;
  // Its amounts are another truck's.
  const typed =
    last.documentId === documentId ? last.typed : { ...last.typed, at: null, wanted: null, ends: null };
  return workedOn.getState().key === typed.key ? typed : { ...typed, key: null, ends: null };
}

/** The value of a field that gives what is wanted; found while it is asked. */
export function SolveBody({ truck }: { truck: Truck }) {
  const shown = shownOf(truck);
  const format = useFormat();
  const documentId = useWorkbench((s) => s.documentId);
  const [typed, setTyped] = useState(() => startOf(documentId));
  const [isAsked, setAsked] = useState(false);
  const { setup } = truck.bolted;
  const fields = useMemo(() => fieldsToVary(shown, setup, truck.file), [shown, setup, truck.file]);
  const worked = useStore(workedOn, (s) => s.key);
  const fieldOf = (wanted: string | null) => fields.find(({ key }) => key === wanted);
  // What was worked on may be no field that is varied.
  const field = fieldOf(typed.key ?? worked) ?? fieldOf(MOSTLY) ?? fields[0]!;
  const { of } = typed;
  const [from, to] = typed.ends ?? fieldStart(field, format, 4);
  const at = setup.stances.find(({ name }) => name === typed.at)?.travel ?? 0;
  const wanted = typed.wanted ?? startText(truck, of, at, format);
  const measure = targetMeasure({ of });
  const [low, high] = [from, to].map((text) => fieldEnd(field, text, format.units)) as [
    number | null,
    number | null,
  ];
  const value = of === "bumpSteer" ? 0 : fieldEnd({ kind: measure }, wanted, format.units);
  const isReady =
    low !== null && high !== null && low < high && value !== null && (of !== "gap" || value >= 0);
  // A part of the body has to be told beside the field; all else the worker has.
  const document = field.key.startsWith("truck.body") ? shown : askedOf(truck);
  const question = useMemo(() => {
    if (!isReady) return null;
    const target = targetOf(of, value, at);
    // A range that was typed is the one that is meant.
    return { document, field: field.key, target, from: low, to: high, looksOn: typed.ends === null };
  }, [isReady, document, field.key, of, value, at, low, high, typed.ends]);
  const answered = useAnswer("solve", isAsked && question ? truck : null, { question: question! });
  const type = (change: Partial<Typed>) => {
    const now = { ...typed, key: field.key, ...change };
    setTyped(now);
    setAsked(false);
    workOn(now.key ?? field.key);
  };
  const ask = (asked: Typed) => {
    // From now on it is about this field, whatever else is worked on.
    const now = { ...asked, key: field.key };
    setTyped(now);
    setAsked(true);
    last = { documentId, typed: now };
    workOn(field.key);
  };
  return (
    <div className="solve">
      <form
        className="fan-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (isReady) ask(typed);
        }}
      >
        <FieldChooser
          fields={fields}
          value={field.key}
          document={shown}
          onField={(key) => type({ key, ends: null })}
        />
        <label>
          for{" "}
          <select value={of} onChange={(event) => type({ of: event.target.value as Of, wanted: null })}>
            {SOLVE_TARGETS.map((one) => (
              <option key={one} value={one}>
                {targetName(one)}
              </option>
            ))}
          </select>
        </label>
        {of !== "bumpSteer" && (
          <label>
            of{" "}
            <input
              value={wanted}
              size={8}
              aria-invalid={value === null || (of === "gap" && value < 0)}
              onChange={(event) => type({ wanted: event.target.value })}
            />
          </label>
        )}
        {isOfPose(of) && setup.stances.length > 0 && (
          <label>
            at{" "}
            <select value={typed.at ?? ""} onChange={(event) => type({ at: event.target.value || null })}>
              {heightChoices(truck, format).map(({ name, text }) => (
                <option key={text} value={name ?? ""}>
                  {text}
                </option>
              ))}
            </select>
          </label>
        )}
        {(["from", "to"] as const).map((name, i) => (
          <label key={name}>
            {name}{" "}
            <input
              value={[from, to][i]}
              size={8}
              aria-invalid={[low, high][i] === null}
              onChange={(event) =>
                type({ ends: i === 0 ? [event.target.value, to] : [from, event.target.value] })
              }
            />
          </label>
        ))}
        <button type="submit" className="button" disabled={!isReady}>
          Solve
        </button>
        {!isReady && (
          <p className="fan-mend">
            Write angles such as 8.4 and lengths such as 5 5/8 or 143 mm, the smaller value first
            {of === "gap" ? "; a gap is at least 0" : ""}.
          </p>
        )}
      </form>
      {answered && (
        <SolveAnswer
          truck={truck}
          answered={answered}
          field={field}
          document={shown}
          onCancel={() => setAsked(false)}
          onLookOn={({ from, to }) => {
            ask({
              ...typed,
              ends: [exactText(field, from, format, "up"), exactText(field, to, format, "down")],
            });
          }}
        />
      )}
    </div>
  );
}

type SolveAnswerProps = {
  truck: Truck;
  answered: Answered<"solve">;
  field: WindowField;
  document: unknown;
  onCancel: () => void;
  /** Asks again over a wider range, mm or radians. */
  onLookOn: (range: { readonly from: number; readonly to: number }) => void;
};

function SolveAnswer({ truck, answered, field, document, onCancel, onLookOn }: SolveAnswerProps) {
  const format = useFormat();
  const isBehind = useIsBehind(truck);
  const { answer, underWay } = answered;
  const failure = whyNone(answered);
  if (failure !== null) return <p role="alert">It could not be solved: {failure}</p>;
  if (answer === null)
    return (
      <p className="solve-wait" role="status">
        Looking through the range…{" "}
        <progress
          aria-label="Solving"
          max={1}
          {...(underWay?.share == null ? {} : { value: underWay.share })}
        />{" "}
        <button type="button" className="button" onClick={onCancel}>
          Cancel
        </button>
      </p>
    );
  const speech = { model: truck.model, format, document };
  const wider = widerRange(field, answer, answer);
  const kept = answer.found.length === 0 && answer.nearest !== null ? [answer.nearest] : answer.found;
  return (
    <div className="solve-answer" role="status">
      {solveSentences(answer, speech).map((sentence) => (
        <p key={sentence}>{keepTogether(sentence)}</p>
      ))}
      {wider && <p>{NEAREST_AT_END}</p>}
      <div className="solve-acts">
        {wider && (
          <button
            type="button"
            className="button"
            onClick={({ detail, currentTarget }) => {
              // The press takes its own button away: the keyboard goes on with the one that solves.
              const solve = currentTarget.closest(".solve")?.querySelector<HTMLElement>('[type="submit"]');
              if (detail === 0) focusOn(solve);
              onLookOn(wider);
            }}
          >
            {keepTogether(lookOnText(wider, answer.kind, format))}
          </button>
        )}
        {kept.map((one) => (
          <SolvedActs
            key={one.value}
            one={one}
            report={answer}
            field={field}
            document={document}
            isBehind={isBehind}
          />
        ))}
        <SaveMenu
          of="what was solved"
          files={[
            documentFile(truck, "solve", "What was solved", () => solveJson(answer, truck.setup.units)),
          ]}
        />
      </div>
      <CutShort study="solve" of={[answered]} />
    </div>
  );
}
