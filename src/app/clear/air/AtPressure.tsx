import { useId, useMemo, useState } from "react";
import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import { airEquilibrium } from "../../../studies/air/airEquilibrium.ts";
import { within } from "../../../studies/air/airState.ts";
import { equilibriumSentence, heldAt } from "../../../studies/wording/airWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { bareUnit, parseQuantity } from "../../../units/quantity.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

export type AtPressureProps = {
  truck: Truck;
  spring: AirSpringSetup;
  format: LengthFormat;
};

/** Where the truck stands with a pressure in its springs, and a way to put it there. */
export function AtPressure({ truck, spring, format }: AtPressureProps) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const setTravel = useWorkbench((s) => s.setTravel);
  const { setup, model } = truck;
  const unit = bareUnit("pressure", setup.units);
  const read = typed.trim() === "" ? null : parseQuantity(typed, "pressure", setup.units);
  const pressure = read?.ok ? read.value : null;
  const sides = useMemo(
    () =>
      pressure === null || !(pressure >= 0)
        ? []
        : (["left", "right"] as const).flatMap((side) => airEquilibrium(model, side, pressure) ?? []),
    [model, pressure],
  );
  const isBeyond =
    pressure !== null && within(pressure, spring.leastPressure, spring.greatestPressure) !== "within";
  const [left, right] = sides;
  const isAlike = left !== undefined && right !== undefined && left.travel === right.travel;
  const shown = isAlike ? [left] : sides;
  return (
    <div className="air-at">
      <label htmlFor={id}>At this pressure</label>
      <input
        id={id}
        className="entry"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        placeholder={`such as 60 ${unit}`}
        aria-invalid={read?.ok === false || undefined}
        aria-describedby={`${id}-answer`}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      <div id={`${id}-answer`} className="air-answer" role="status">
        {read?.ok === false && <p className="fold-passed">This cannot be read: {read.mend}.</p>}
        {shown.map((found) => {
          const who = heldAt(
            found.pressure,
            isAlike ? "the truck" : `the ${found.side} side`,
            spring,
            setup.units,
          );
          return (
            <p key={found.side} className={isBeyond ? "fold-passed" : undefined}>
              {keepTogether(equilibriumSentence(found, who, setup, format))}
            </p>
          );
        })}
      </div>
      {left?.travel != null && (
        <button type="button" className="button" onClick={() => setTravel(left.travel!)}>
          {isAlike ? "Go there" : "Go to the left one’s height"}
        </button>
      )}
    </div>
  );
}
