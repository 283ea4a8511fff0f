import "./airPanel.css";
import { useMemo } from "react";
import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import type { LengthUnit } from "../../../setup/types/types.ts";
import { airSeat } from "../../../studies/air/airSeat.ts";
import { type AirState, airStateAt } from "../../../studies/air/airState.ts";
import {
  airPressureText,
  allowedSentence,
  beyondText,
  holdingText,
  rateText,
} from "../../../studies/wording/airWords.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { Fold } from "../../parts/Fold.tsx";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { type AirRow, AirTable } from "./AirTable.tsx";
import { AtPressure } from "./AtPressure.tsx";

export type AirPanelProps = {
  truck: Truck;
};

/** The air springs: height, load, pressure and ride at the height shown and at each stance, and where a pressure puts it. */
export function AirPanel({ truck }: AirPanelProps) {
  const travel = useWorkbench((s) => s.travel);
  const { setup } = truck;
  const { airSpring } = setup;
  const left = useMemo(() => airStateAt(truck.model, "left", travel), [truck, travel]);
  if (airSpring === null)
    return (
      <Fold id="air" title="Air springs" note="none given">
        <p className="fold-fine">
          Add an air spring to the setup, by its two mounts, to see its height at each stance; with its load
          curve and the truck’s weights also pressure, ride frequency and where a pressure puts the truck.
        </p>
      </Fold>
    );
  return (
    <Fold id="air" title="Air springs" note={noteText(left, airSpring, setup.units)}>
      <AirAnswers truck={truck} spring={airSpring} travel={travel} left={left} />
      <SaveMenu of="the air springs" files={[reportFile(truck, { of: "air" }, "The air springs")]} />
    </Fold>
  );
}

type AirAnswersProps = { truck: Truck; spring: AirSpringSetup; travel: number; left: AirState | null };

function AirAnswers({ truck, spring, travel, left }: AirAnswersProps) {
  const format = useFormat();
  const { setup, model } = truck;
  const { units, masses } = setup;
  const right = useMemo(() => airStateAt(model, "right", travel), [model, travel]);
  const stances = useMemo(
    () =>
      setup.stances.map(
        ({ name, travel: at }): AirRow => ({ name, travel: at, state: airStateAt(model, "left", at) }),
      ),
    [model, setup],
  );
  const empty = useMemo((): AirRow => {
    const seat = airSeat(model, "left");
    return { name: "Bags empty", travel: seat.travel, state: airStateAt(model, "left", seat.travel), seat };
  }, [model]);
  const isAlike = left !== null && right !== null && sameAir(left, right);
  const now: AirRow[] = isAlike
    ? [{ name: "Now", travel: null, state: left }]
    : [
        { name: "Now, left", travel: null, state: left },
        { name: "Now, right", travel: null, state: right },
      ];
  return (
    <>
      <AirTable
        caption="Air spring now and at each stance, left side"
        rows={[...now, ...stances, empty]}
        spring={spring}
        setup={setup}
        units={units}
        format={format}
      />
      {left && (
        <div className="fold-said">
          <p className="fold-fine">
            Now: motion ratio {left.motionRatio.toFixed(2)}, spring rate {rateText(left.springRate, units)},
            at the wheel {rateText(left.wheelRate, units)}, air closed in
            {left.volumeIsEstimate ? ", its volume estimated" : ""}. Ride is the body’s natural frequency on
            the spring.
          </p>
          <Meaning of="ride frequency" />
        </div>
      )}
      {spring.curve?.kind === "loads" && (
        <p className="fold-fine">
          The load curve is read straight between its points, so rates and ride step where a point is passed.
        </p>
      )}
      <p className="fold-fine">
        A pressure is what it takes to hold the truck there. {allowedSentence(spring, units, format)}
      </p>
      {masses === null || spring.curve === null ? (
        <p className="fold-fine">
          No pressures: the setup has no {masses === null ? "weights (masses)" : "load curve of the spring"}.
        </p>
      ) : (
        <AtPressure truck={truck} spring={spring} format={format} />
      )}
      <p className="fold-fine air-caution">
        <strong>Air under pressure can kill.</strong> Never go past the limits the makers give for spring,
        tank, valves and lines. Let the air out before working on any of it, and never trust air alone to hold
        a truck up while somebody is under it.
      </p>
    </>
  );
}

/** mm and N. Two sides this alike are one row. */
function sameAir(a: AirState, b: AirState): boolean {
  return Math.abs(a.height - b.height) < 0.05 && Math.abs((a.load ?? 0) - (b.load ?? 0)) < 0.5;
}

function noteText(state: AirState | null, spring: AirSpringSetup, units: LengthUnit) {
  if (state === null) return "out of reach";
  const beyond = beyondText(state.heightWithin, "height") || beyondText(state.pressureWithin, "pressure");
  const pressure =
    state.pressure !== null
      ? `${airPressureText(state.pressure, spring, units)} to hold it here`
      : state.noPressure === null
        ? ""
        : holdingText(state, spring, units);
  return beyond === "" ? pressure : <span className="fold-passed">{beyond}</span>;
}
