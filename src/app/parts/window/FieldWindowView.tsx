import { useMemo } from "react";
import { effectiveDocument, withoutVariants } from "../../../setup/editing/effectiveDocument.ts";
import { removeAt } from "../../../setup/reading/setAt.ts";
import { variantTicks } from "../../../studies/window/variantTicks.ts";
import { windowSentences } from "../../../studies/wording/windowWords.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keepTogether.ts";
import { useAnswer, useLastAnswer } from "../../work/useAnswer.ts";
import { CutShort } from "../CutShort.tsx";
import { WindowBar } from "./WindowBar.tsx";

export type FieldWindowViewProps = {
  truck: Truck;
  /** The variant the truck is of; null = the setup as it stands. */
  variant: string | null;
  /** The field's key: `knuckle.hubFace`. */
  field: string;
  /** A value tried, mm or radians. Default the field's own. */
  value?: number;
  /** Puts the variants on the bar. Default false. */
  hasTicks?: boolean;
};

/** How little and how much a field may be: the bar, and in words what sets each end. */
export function FieldWindowView({ truck, variant, field, value, hasTicks = false }: FieldWindowViewProps) {
  const whole = useWorkbench((s) => s.good?.document ?? null);
  const format = useFormat();
  // Without the body, which the worker has already: a window is asked for by what is typed, and a scan is long.
  const document = useMemo(() => {
    const shown = variant === null ? withoutVariants(whole) : effectiveDocument(whole, variant);
    return removeAt(shown, ["truck", "body"]);
  }, [whole, variant]);
  const question = useMemo(() => ({ document, field }), [document, field]);
  const answered = useAnswer("window", truck, { question });
  const window = useLastAnswer(answered);
  const speech = useMemo(() => ({ model: truck.model, format, document }), [truck, format, document]);
  const ticks = useMemo(
    () => (hasTicks ? variantTicks(whole, truck.bolted.setup, field, truck.file) : []),
    [hasTicks, whole, truck, field],
  );
  if (answered === null) return null;
  if (answered.failure !== null) return <p>The window could not be worked out: {answered.failure}</p>;
  if (window === null || window.field !== field)
    return <p className="window-wait">Looking how far it can go…</p>;
  return (
    <div className="window-view" aria-busy={answered.answer === null}>
      <WindowBar window={window} speech={speech} ticks={ticks} {...(value === undefined ? {} : { value })} />
      <div className="window-words">
        {windowSentences(window, speech).map((sentence) => (
          <p key={sentence}>{keepTogether(sentence)}</p>
        ))}
      </div>
      <CutShort study="window" of={[answered]} />
    </div>
  );
}
