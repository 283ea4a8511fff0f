import { useId, useMemo, useState } from "react";
import { type AirEquilibrium, airEquilibrium } from "../../../studies/air/airEquilibrium.ts";
import { within } from "../../../studies/air/airState.ts";
import { travelText } from "../../../studies/wording/poseText.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { bareUnit, parseQuantity } from "../../../units/quantity.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keepTogether.ts";
import { beyondText } from "./airText.ts";

export type AtPressureProps = {
  truck: Truck;
  format: LengthFormat;
};

/** Where the truck stands with a pressure in its springs, and a way to put it there. */
export function AtPressure({ truck, format }: AtPressureProps) {
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
  const { leastPressure = null, greatestPressure = null } = setup.airSpring ?? {};
  const beyond =
    pressure === null ? "" : beyondText(within(pressure, leastPressure, greatestPressure), "pressure");
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
        {beyond !== "" && <p className="fold-passed">The {beyond} that the setup allows.</p>}
        {shown.map((found) => (
          <p key={found.side}>{keepTogether(standsText(found, isAlike, format))}</p>
        ))}
      </div>
      {left?.travel != null && (
        <button type="button" className="button" onClick={() => setTravel(left.travel!)}>
          {isAlike ? "Go there" : "Go to the left one’s height"}
        </button>
      )}
    </div>
  );
}

function standsText(
  { side, rest, travel, balances }: AirEquilibrium,
  isAlike: boolean,
  format: LengthFormat,
) {
  const who = isAlike ? "it" : `the ${side} side`;
  const at = travel === null ? "" : travelText(travel, format);
  const others = balances.filter((balance) => balance.travel !== travel && balance.stable);
  const more =
    others.length === 0
      ? ""
      : ` Lowered from above it may also rest at ${others.map((one) => travelText(one.travel, format)).join(" or ")}.`;
  switch (rest) {
    case "balance":
      return `Raised from full bump, ${who} stands at ${at}.${more}`;
    case "bump":
      return `Not enough to lift ${who} off ${at}.${more}`;
    case "droop":
      return `It lifts ${who} all the way to ${at}.`;
    default:
      return `The load curve does not reach where ${who} would stand.`;
  }
}
