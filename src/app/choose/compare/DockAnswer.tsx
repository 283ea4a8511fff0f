import "./dockAnswer.css";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { LateBody, LateExtra } from "../../parts/late.tsx";
import { useCheckNow } from "../../parts/useSettled.ts";
import { useHasStep } from "../../state/lastStep.ts";
import type { Truck } from "../../state/truck.ts";
import { useWaitingFor } from "../../state/useWaitingFor.ts";
import { WorstCell } from "./WorstCell.tsx";

const LAST_CHANGE = new LateBody(async () => (await import("../../clear/LastChange.tsx")).LastChange);

export type DockAnswerProps = {
  truck: Truck;
  format: LengthFormat;
};

/**
 * The answer over the whole range in few words and what it was before the last change, beside the curves' button on a phone: there
 * a field is far from the banner.
 */
export function DockAnswer({ truck, format }: DockAnswerProps) {
  const isWaiting = useWaitingFor() !== null;
  const hasStep = useHasStep();
  const check = useCheckNow(isWaiting ? null : truck);
  if (check === null) return null;
  return (
    <div className="dock-told">
      <button type="button" className="dock-answer" onClick={() => window.scrollTo({ top: 0 })}>
        <WorstCell check={check} format={format} />
      </button>
      <div className="last-change">
        {hasStep && <LateExtra of={LAST_CHANGE} props={{ truck, isShort: true }} about={truck} />}
      </div>
    </div>
  );
}
