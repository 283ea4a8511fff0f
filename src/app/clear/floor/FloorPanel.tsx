import "./floorPanel.css";
import { useDeferredValue, useMemo } from "react";
import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { floorAt, scrubLine } from "../../../studies/floor/floorAt.ts";
import { Budget } from "../../../studies/numeric/budget.ts";
import type { FloorClearance } from "../../../studies/stances/floorPose.ts";
import { stanceMeasures } from "../../../studies/stances/stanceMeasures.ts";
import { belowWords, clearanceText } from "../../../studies/wording/floorWords.ts";
import { barredAt, heightSentence } from "../../../studies/wording/heightWords.ts";
import { lipName } from "../../../studies/wording/poseWords.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { Fold } from "../../parts/Fold.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { MeasureField } from "./MeasureField.tsx";
import { RollPart } from "./RollPart.tsx";

export type FloorPanelProps = {
  truck: Truck;
};

interface Measure {
  readonly measure: StanceMeasure;
  readonly label: string;
  readonly isGiven: (truck: Truck) => boolean;
}

const MEASURES: readonly Measure[] = [
  { measure: "travel", label: "Wheel travel, + bump", isGiven: () => true },
  { measure: "lowerArmAngle", label: "Lower arm, + joint below pivots", isGiven: () => true },
  {
    measure: "airSpringHeight",
    label: "Air spring height",
    isGiven: ({ setup }) => setup.airSpring !== null,
  },
  { measure: "lipHeight", label: "Floor to fender lip", isGiven: ({ setup }) => !!setup.floor?.lip },
  { measure: "frameHeight", label: "Floor to frame", isGiven: ({ setup }) => !!setup.floor?.frame },
];

/** Seconds for what keeps the truck from the height shown: a march along its travel, done while it is drawn. */
const SECONDS = 0.05;

/** The stance by everything a shop reads it by, each a control; what is how far off the floor; the body rolled. */
export function FloorPanel({ truck }: FloorPanelProps) {
  const format = useFormat();
  const travel = useWorkbench((s) => s.travel);
  const floor = useMemo(() => floorAt(truck.model, { left: travel, right: travel }, 0), [truck, travel]);
  const lip = floor?.lip ?? null;
  const frame = floor?.frame ?? null;
  const note =
    lip !== null
      ? `lip ${clearanceText(lip.left, format)}`
      : frame !== null
        ? `frame ${clearanceText(frame.left, format)}`
        : undefined;
  return (
    <Fold id="floor" title="Stance and floor" note={note}>
      <FloorAnswers truck={truck} now={travel} format={format} />
      <SaveMenu of="the floor" files={[reportFile(truck, { of: "floor" }, "Stance and floor")]} />
    </Fold>
  );
}

type FloorAnswersProps = {
  truck: Truck;
  /** The travel shown; what takes long comes after it. */
  now: number;
  format: LengthFormat;
};

function FloorAnswers({ truck, now, format }: FloorAnswersProps) {
  const travel = useDeferredValue(now);
  const clearances = useMemo(
    () => floorAt(truck.model, { left: travel, right: travel }, 0)?.clearances ?? [],
    [truck, travel],
  );
  const measures = useMemo(() => stanceMeasures(truck.model, travel), [truck, travel]);
  const given = MEASURES.filter(({ isGiven }) => isGiven(truck));
  const steer = useDeferredValue(useWorkbench((s) => s.steer));
  const missing = given.length < MEASURES.length;
  const barred = useMemo(
    () =>
      barredAt(
        travel,
        truck.model,
        format,
        Budget.of(SECONDS, () => performance.now()),
      ),
    [truck, travel, format],
  );
  return (
    <>
      {barred && (
        <p className="fold-passed">
          <StateMark word="close" /> {keepTogether(heightSentence(barred, truck.model, format))}
        </p>
      )}
      <p className="fold-fine floor-now">
        Now: {keepTogether(standsText(travel, steer, truck.model, format))}.
      </p>
      <p className="fold-fine">
        All below is told straight ahead, as a stance is measured. Type any of these to put the truck there.
      </p>
      <div className="floor-measures">
        {given.map(({ measure, label }) => (
          <MeasureField
            key={measure}
            truck={truck}
            measure={measure}
            label={measure === "lipHeight" ? `Floor to ${lipName(truck.setup)}` : label}
            value={measures?.[measure] ?? null}
            format={format}
          />
        ))}
      </div>
      {missing && (
        <p className="fold-fine">
          More can be read here when the setup says where: air spring, fender lip and frame (its floor block).
        </p>
      )}
      <Clearances truck={truck} travel={travel} clearances={clearances} format={format} />
      <div className="fold-heading">
        <h3>Body roll, or one wheel on a bump</h3> <Meaning of="roll" />
      </div>
      <RollPart truck={truck} travel={travel} format={format} />
      <p className="fold-fine">
        Worked out on a flat floor with rigid tires. How low a truck may be, and what may hang below the scrub
        line, is law in many places: the codes that apply where it is driven rule. Never reach under a truck
        that air or a jack alone holds up.
      </p>
    </>
  );
}

type ClearancesProps = {
  truck: Truck;
  travel: number;
  clearances: readonly FloorClearance[];
  format: LengthFormat;
};

function Clearances({ truck, travel, clearances, format }: ClearancesProps) {
  const scrub = useMemo(
    () => (["left", "right"] as const).flatMap((flat) => scrubLine(truck.model, travel, flat) ?? []),
    [truck, travel],
  );
  if (clearances.length === 0)
    return <p className="fold-fine">No points that may drag are named in the setup’s floor block.</p>;
  const lowest = [...clearances].sort((a, b) => a.clearance - b.clearance);
  return (
    <>
      <div className="fold-heading">
        <h3>Off the floor, the lowest first</h3> <Meaning of="ground clearance" />
      </div>
      <ul className="floor-points">
        {lowest.map(({ name, side, clearance }) => {
          const drags = clearance < 0;
          const flat = scrub.filter(({ dragging }) =>
            dragging.some((one) => one.name === name && one.side === side),
          );
          return (
            <li key={`${side} ${name}`} className={drags ? "fold-passed" : ""}>
              <StateMark word={drags ? "rubs" : flat.length > 0 ? "close" : "clear"} />
              <span>
                {name} {side}
                {!drags && flat.length > 0 && (
                  <span className="floor-drags">
                    drags with the {flat.map((one) => one.flat).join(" or ")} tire flat
                  </span>
                )}
              </span>
              <span className="floor-amount">
                {drags
                  ? `in the floor by ${belowWords(clearance, format)}`
                  : clearanceText(clearance, format)}
              </span>
            </li>
          );
        })}
      </ul>
      <div className="fold-said">
        <p className="fold-fine">
          {scrub.every(({ dragging }) => dragging.length === 0)
            ? "With either front tire flat, down on its rim, none of them reaches the scrub line."
            : "Scrub line: from the flat tire’s rim to the other tire’s patch; what hangs to it drags."}
        </p>
        <Meaning of="scrub line" />
      </div>
    </>
  );
}
