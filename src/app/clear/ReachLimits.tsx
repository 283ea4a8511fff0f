import type { ReachLimit } from "../../studies/reports/reachLimits.ts";
import { limitSentence } from "../../studies/wording/limitSentences.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keepTogether.ts";

export type ReachLimitsProps = {
  truck: Truck;
  limits: readonly ReachLimit[];
  /** What joints, stops and shocks leave of the range, in a sentence; "" = all of it. */
  counted: string;
};

/** Where the linkage cannot follow within the range that was checked, or a limit is passed: the verdict ends there. */
export function ReachLimits({ truck, limits, counted }: ReachLimitsProps) {
  const format = useFormat();
  if (limits.length === 0 && counted === "") return null;
  return (
    <ul className="verdict-limits">
      {limits.map((limit) => (
        <li key={`${limit.side} ${limit.along} ${limit.startsAt}`}>
          {keepTogether(limitSentence(limit, truck.model, format))}
        </li>
      ))}
      {counted !== "" && <li>{counted}</li>}
    </ul>
  );
}
