import "./gapPanel.css";
import { shownGaps } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { GapRow } from "./GapRow.tsx";

export type GapPanelProps = {
  truck: Truck;
};

/** Every part on each side at this pose, nearest first. */
export function GapPanel({ truck }: GapPanelProps) {
  const gaps = useWorkbench(shownGaps);
  if (gaps.length === 0) return null;
  return (
    <section className="gaps" aria-labelledby="gaps-title">
      <h2 id="gaps-title" className="label">
        Gaps now, nearest first
      </h2>
      <ol>
        {gaps.map((entry) => (
          <GapRow key={`${entry.side} ${entry.part}`} entry={entry} setup={truck.setup} />
        ))}
      </ol>
    </section>
  );
}
