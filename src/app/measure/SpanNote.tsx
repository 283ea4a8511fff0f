import { spanEffect } from "../../studies/plausibility/spanEffect.ts";
import { knuckleSentence } from "../../studies/wording/comparedNumbers.ts";
import { spanSentence } from "../../studies/wording/unusualWords.ts";
import type { Truck } from "../state/truck.ts";
import { unusualAt } from "../state/useDoubts.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";

export type SpanNoteProps = { truck: Truck };

/** What the difference of the knuckle's span and the arms' ball joints does, where both are typed. */
export function SpanNote({ truck: { bolted } }: SpanNoteProps) {
  const format = useFormat();
  const isTold = useWorkbench((s) =>
    unusualAt(s, ["knuckle", "span"]).some(({ confirm }) => confirm.check === "span"),
  );
  const effect = spanEffect(bolted.setup, bolted.frontEnd);
  const text = effect && !isTold ? spanSentence(effect, format) : "";
  return text === "" ? null : <p className="part-note">{keepTogether(text)}</p>;
}

/** What follows from the knuckle, over its fields: it goes with every key. */
export function KnuckleNote() {
  const format = useFormat();
  const text = useWorkbench((s) => (s.truck ? knuckleSentence(s.truck.model, format) : ""));
  return text === "" ? null : <p className="part-note">{keepTogether(text)}</p>;
}
