import { useStore } from "zustand";
import { spanEffect } from "../../studies/plausibility/spanEffect.ts";
import { knuckleSentence } from "../../studies/wording/comparedNumbers.ts";
import { spanSentence } from "../../studies/wording/unusualWords.ts";
import { useStill } from "../parts/useCalm.ts";
import { useHeldHeight } from "../parts/useSize.ts";
import { pointerHeld } from "../state/pointerHeld.ts";
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
  const text = useStill(effect && !isTold ? spanSentence(effect, format) : "");
  return text === "" ? null : <p className="part-note">{keepTogether(text)}</p>;
}

/** What follows from the knuckle, over its fields: it goes with every key. */
export function KnuckleNote() {
  const format = useFormat();
  const text = useWorkbench((s) => (s.truck ? knuckleSentence(s.truck.model, format) : ""));
  const isDragged = useStore(pointerHeld, (s) => s.isHeld);
  const held = useHeldHeight<HTMLParagraphElement>(false, isDragged);
  return text === "" ? null : (
    <p ref={held} className="part-note">
      {keepTogether(text)}
    </p>
  );
}
