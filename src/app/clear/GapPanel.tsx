import "./gapPanel.css";
import { useMemo, useState } from "react";
import { partRows } from "../../studies/wording/gapRows.ts";
import { CutShort } from "../parts/CutShort.tsx";
import { useStill } from "../parts/useCalm.ts";
import { shownGaps } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useWaitingFor } from "../state/useWaitingFor.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { useAnswer } from "../work/useAnswer.ts";
import { GapRow } from "./GapRow.tsx";

export type GapPanelProps = {
  truck: Truck;
};

/** So many parts are listed before the rest has to be asked for: those that could matter. */
const FIRST_ROWS = 7;

/** Every part, the worst first: its worst gap over the whole range and its gap at the pose shown. */
export function GapPanel({ truck: given }: GapPanelProps) {
  const truck = useStill(given);
  const gaps = useWorkbench(shownGaps);
  const check = useAnswer("check", truck);
  // What was worst of another truck is not told beside what is near now; in a drag of a part the list stays as it is.
  const isBehind = useWorkbench((s) => s.truck !== truck && !s.isGesturing);
  const report = isBehind ? null : (check?.answer ?? null);
  const format = useFormat();
  const isAssumed = useWaitingFor() !== null;
  const [isWhole, setWhole] = useState(false);
  const rows = useMemo(() => partRows(gaps, report), [gaps, report]);
  if (rows.length === 0) return null;
  const shown = isWhole ? rows : rows.slice(0, FIRST_ROWS);
  return (
    <section className="gaps" aria-labelledby="gaps-title" aria-busy={report === null}>
      <header className="gaps-head">
        <h2 id="gaps-title" className="label">
          {isAssumed ? "What comes nearest, of assumed numbers" : "What comes nearest, worst first"}
        </h2>
        <span className="label">{check?.isCut ? "worst so far" : "worst"}</span>
        <span className="label gaps-now">now</span>
      </header>
      {check && <CutShort study="nearest" of={[check]} />}
      <ol>
        {shown.map((row) => (
          <GapRow key={row.part} row={row} setup={truck.setup} format={format} isAssumed={isAssumed} />
        ))}
      </ol>
      {rows.length > FIRST_ROWS && (
        <button
          type="button"
          className="button gaps-more"
          aria-expanded={isWhole}
          onClick={() => setWhole(!isWhole)}
        >
          {isWhole ? "Only the nearest" : `All ${rows.length} parts`}
        </button>
      )}
    </section>
  );
}
