import "./geometryPanel.css";
import { useDeferredValue, useMemo } from "react";
import { ackermannAt } from "../../../studies/geometry/ackermannAt.ts";
import type { GeometryReport } from "../../../studies/geometry/geometryReport.ts";
import { jackingAt, steeringRatio } from "../../../studies/geometry/steeringRatio.ts";
import {
  bumpSteerText,
  circleText,
  farText,
  flatText,
  ratioText,
} from "../../../studies/wording/geometryTexts.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import { instantCenter, rollCenter } from "../../../suspension/rollCenter.ts";
import { wheelMotion } from "../../../suspension/wheelMotion.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { Fold } from "../../parts/Fold.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { useHeldHeight } from "../../parts/useSize.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";

export type GeometryPanelProps = {
  truck: Truck;
};

/** What steering and suspension geometry come to, at the pose shown and over the whole range. */
export function GeometryPanel({ truck }: GeometryPanelProps) {
  return (
    <Fold id="geometry" title="Steering and geometry">
      <Now truck={truck} />
      <Whole truck={truck} />
      <SaveMenu of="the geometry" files={[reportFile(truck, { of: "geometry" }, "Steering and geometry")]} />
      <p className="fold-fine">
        Roll center, instant center and jacking are those of rigid tires and bushings, by geometry alone;
        forces and body motion on the road are another matter.
      </p>
    </Fold>
  );
}

function Now({ truck }: GeometryPanelProps) {
  const format = useFormat();
  const travel = useDeferredValue(useWorkbench((s) => s.travel));
  const steer = useDeferredValue(useWorkbench((s) => s.steer));
  const { model, setup } = truck;
  const now = useMemo(() => {
    const { frontEnd } = model;
    const motion = wheelMotion(frontEnd, "left", travel, 0);
    const at = motion && instantCenter(motion);
    return {
      center: rollCenter(frontEnd, { left: travel, right: travel }, 0),
      instant: motion && at && { y: at.y, height: at.z - motion.contactPatch[2] },
      ackermann: ackermannAt(model, travel, steer),
      ratio: steeringRatio(frontEnd, travel, steer),
      jacking: jackingAt(frontEnd, travel, steer),
    };
  }, [model, travel, steer]);
  const { center, instant, ackermann, ratio, jacking } = now;
  return (
    <dl className="facts">
      <Fact name="Roll center height" of="roll center" plus="+ above the floor">
        {farText(center?.height, format)}
      </Fact>
      <Fact
        name="Instant center, left wheel"
        of="instant center"
        plus="from the centerline, + left; height above the floor"
      >
        {instant ? `${farText(instant.y, format)}; ${farText(instant.height, format)}` : "far"}
      </Fact>
      <Fact name="Ackermann" of="Ackermann" plus="100% = no scrub">
        {setup.truck.wheelbase === null
          ? "needs the wheelbase"
          : ackermann
            ? `${Math.round(ackermann.percent)}%, outer wheel off by ${angleText(ackermann.error)}`
            : "steer to see it"}
      </Fact>
      <Fact name="Steering ratio here" of="steering ratio">
        {ratio ? ratioText(ratio, format.units) : "–"}
      </Fact>
      <Fact name="Jacking by this steer" of="jacking" plus="+ body rises">
        {jacking ? `${lengthText(jacking.rise, format)}, roll ${angleText(jacking.roll, 2)}` : "–"}
      </Fact>
    </dl>
  );
}

function Whole({ truck }: GeometryPanelProps) {
  const geometry = useAnswer("geometry", truck);
  const held = useHeldHeight<HTMLDivElement>(geometry?.answer == null && geometry?.failure == null);
  return <div ref={held}>{wholeOf(truck, geometry)}</div>;
}

function wholeOf(truck: Truck, geometry: Answered<"geometry"> | null) {
  if (geometry?.failure != null)
    return <p role="alert">The geometry could not be worked out: {geometry.failure}</p>;
  if (geometry?.answer == null)
    return (
      <p className="fold-fine" role="status">
        Working out bump steer and turning circles…
      </p>
    );
  return <WholeRange truck={truck} report={geometry.answer} />;
}

function WholeRange({ truck, report }: { truck: Truck; report: GeometryReport }) {
  const format = useFormat();
  const { bumpSteer, flatInner, flatOuter, turning } = report;
  const circles = [turning.left, turning.right].flatMap((one) => one ?? []);
  const largest = (of: (one: (typeof circles)[number]) => number) => Math.max(...circles.map(of));
  return (
    <dl className="facts">
      <Fact name="Bump steer over travel" of="bump steer">
        {bumpSteerText([bumpSteer.left, bumpSteer.right], format)}
      </Fact>
      <Fact name="Least bump steer, inner end" of="least bump steer">
        {flatText(flatInner, format)}
      </Fact>
      <Fact name="Least bump steer, outer end" of="least bump steer">
        {flatText(flatOuter, format)}
      </Fact>
      <Fact name="Turning circle, curb to curb" of="turning circle">
        {truck.setup.truck.wheelbase === null
          ? "needs the wheelbase"
          : circles.length === 0
            ? "full lock is out of reach"
            : circleText(
                largest((one) => one.curbToCurb),
                format,
              )}
      </Fact>
      {circles.length > 0 && (
        <Fact name="Wall to wall, at least" of="turning circle" plus="of what is in the setup">
          {circleText(
            largest((one) => one.wallToWall),
            format,
          )}
        </Fact>
      )}
    </dl>
  );
}

type FactProps = {
  name: string;
  plus?: string;
  /** Its name among the definitions. */
  of?: string;
  children: string;
};

function Fact({ name, plus, of, children }: FactProps) {
  return (
    <div>
      <dt>
        {name} {of !== undefined && <Meaning of={of} />}
        {plus !== undefined && <small>{plus}</small>}
      </dt>
      <dd>{keepTogether(children)}</dd>
    </div>
  );
}
