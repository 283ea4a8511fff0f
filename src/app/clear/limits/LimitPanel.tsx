import "./limitPanel.css";
import { useMemo, useState } from "react";
import type { LimitPose } from "../../../studies/limits/limitsOf.ts";
import { limitsPastAt } from "../../../studies/limits/limitsPastAt.ts";
import { limitRows, limitsState } from "../../../studies/wording/limitRows.ts";
import { bindsText, limitsStateSentence } from "../../../studies/wording/limitTexts.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { CutShort } from "../../parts/CutShort.tsx";
import { Fold } from "../../parts/Fold.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { useHeldHeight } from "../../parts/useSize.ts";
import { marginsAt } from "../../state/shown.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { LimitItem } from "./LimitItem.tsx";
import { LimitStances } from "./LimitStances.tsx";
import { NotChecked } from "./NotChecked.tsx";

export type LimitPanelProps = {
  truck: Truck;
  /** The truck before the drag that is under way; what holds over its range stands until that ends. */
  calm: Truck;
};

/** So many limits are listed before the rest has to be asked for. */
const FIRST_ROWS = 5;

/** What joints, stops, shocks and air springs allow: what is left at the pose shown, what is met first, what is not checked. */
export function LimitPanel({ truck, calm }: LimitPanelProps) {
  const { limits, airSpring } = truck.setup;
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const format = useFormat();
  const pose = marginsAt(truck, travel, steer);
  const isGiven = limits !== null || airSpring !== null;
  return (
    <Fold
      id="limits"
      title="Limits, what is met first"
      isOpen={isGiven}
      note={isGiven ? firstText(pose, format) : "none given"}
    >
      {isGiven ? (
        <GivenLimits truck={calm} pose={pose} />
      ) : (
        <p className="fold-fine">
          The setup does not say what joints, stops and shocks allow, so some poses shown and checked may be
          ones the truck cannot take.
        </p>
      )}
      <NotChecked truck={truck} />
      {isGiven && <SaveMenu of="the limits" files={[reportFile(truck, { of: "limits" }, "The limits")]} />}
      <p className="fold-fine">
        A limit kept here says something about angles and lengths in the setup, not that any part is fit for
        the road. What a joint, rod end, shock or air spring allows is for its maker to say.
      </p>
    </Fold>
  );
}

function GivenLimits({ truck, pose }: { truck: Truck; pose: LimitPose }) {
  const format = useFormat();
  const limits = useAnswer("limits", truck);
  const report = limits?.answer ?? null;
  const failure = limits?.failure ?? null;
  const isFirst = report === null && failure === null;
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const held = useHeldHeight<HTMLElement>(isFirst);
  const rows = useMemo(() => limitRows(pose, report?.overall ?? null), [pose, report]);
  const [isWhole, setWhole] = useState(false);
  return (
    <section ref={held} className="limits" aria-label="Limits" aria-busy={isFirst}>
      {report === null && failure !== null && (
        <p role="alert">The limits over the range could not be worked out: {failure}</p>
      )}
      <div className="fold-fine">
        <span role="status">
          {isFirst
            ? "Working out all travel and both locks…"
            : report && limitsStateSentence(limitsState(report))}
        </span>{" "}
        <Meaning of="in hand" />
      </div>
      {limits && <CutShort study="limits" of={[limits]} />}
      <p className="limit-pose">Now: {keepTogether(standsText(travel, steer, truck.model, format))}.</p>
      <div className="limit-head" aria-hidden="true">
        <span className="label">limit, the least share in hand first</span>
        <span className="label">least</span>
        <span className="label">now</span>
      </div>
      <ol className="limit-list">
        {(isWhole ? rows : rows.slice(0, FIRST_ROWS)).map((row) => (
          <LimitItem key={row.name} row={row} setup={truck.setup} format={format} />
        ))}
      </ol>
      {rows.length > FIRST_ROWS && (
        <button
          type="button"
          className="button limit-more"
          aria-expanded={isWhole}
          onClick={() => setWhole(!isWhole)}
        >
          {isWhole ? "Only the least" : `All ${rows.length} limits`}
        </button>
      )}
      {report && <LimitStances stances={report.stances} model={truck.model} format={format} />}
    </section>
  );
}

function firstText(pose: LimitPose, format: LengthFormat) {
  if (!pose.ok) return "out of reach";
  const isBeyond = limitsPastAt(pose).length > 0;
  return <span className={isBeyond ? "fold-passed" : ""}>{keepTogether(bindsText(pose, format))}</span>;
}
