import { DRAG_HINT, SHOWN_ONCE, worstHereText } from "../../studies/wording/stageTexts.ts";
import { useCheckNow } from "../parts/useSettled.ts";
import { isAtEntry } from "../stage/worst.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWaitingFor } from "../state/useWaitingFor.ts";
import { useWorkbench } from "../state/useWorkbench.ts";

export type StageHintProps = { truck: Truck };

/**
 * Under the picture: that it plays by itself while it does, and that the truck stands where its answer is met while it does; else
 * how the picture is turned. Both lie in one place: nothing moves when one gives way to the other.
 */
export function StageHint({ truck }: StageHintProps) {
  const isShownOnce = useStage((s) => s.isShownOnce);
  const waiting = useWaitingFor();
  const report = useCheckNow(waiting ? null : truck)?.answer ?? null;
  const worst = report?.worst ?? null;
  const isThere = useWorkbench((s) => worst !== null && worst.together !== true && isAtEntry(worst, s));
  const told = isShownOnce
    ? SHOWN_ONCE
    : isThere && report
      ? worstHereText(report.verdict === "rubs", report.cutShort === true)
      : null;
  return (
    <span className="stage-hint">
      <span data-hidden={told !== null || undefined}>{DRAG_HINT}</span>
      {/* Its room is kept by the longest that may stand here. */}
      <span className="stage-told" data-hidden={told === null || undefined}>
        {told ?? SHOWN_ONCE}
      </span>
    </span>
  );
}
