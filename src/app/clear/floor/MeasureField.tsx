import { useId, useState } from "react";
import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { travelForMeasure } from "../../../studies/stances/travelForMeasure.ts";
import { airHeightText } from "../../../studies/wording/airWords.ts";
import { clearanceText } from "../../../studies/wording/floorWords.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import { parseAngle } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { clampTravel } from "../../state/viewActions.ts";

export type MeasureFieldProps = {
  truck: Truck;
  measure: StanceMeasure;
  label: string;
  /** mm or radians at the height shown; null = it cannot be measured there. */
  value: number | null;
  format: LengthFormat;
};

/** One measure of the stance, which is a control too: a number typed into it puts the truck where it reads that. */
export function MeasureField({ truck, measure, label, value, format }: MeasureFieldProps) {
  const setTravel = useWorkbench((s) => s.setTravel);
  return (
    <TypedMeasure
      label={label}
      shown={value === null ? "–" : measureText(measure, value, truck, format)}
      onGo={(typed) => {
        const found = travelOf(truck, measure, typed, format);
        if (!found.ok) return found.mend;
        setTravel(found.travel);
        return null;
      }}
    />
  );
}

export type TypedMeasureProps = {
  label: string;
  /** As it is now. */
  shown: string;
  /** Takes what was typed; says what is wrong with it, else null. */
  onGo: (typed: string) => string | null;
};

/** A number that is read, and can be typed over: it takes effect on Enter, and where the field is left. */
export function TypedMeasure({ label, shown, onGo }: TypedMeasureProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [mend, setMend] = useState<string | null>(null);
  const go = () => {
    if (typed === null) return;
    const wrong = onGo(typed);
    setMend(wrong);
    if (wrong === null) setTyped(null);
  };
  return (
    <div className="floor-measure">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="entry"
        type="text"
        autoComplete="off"
        spellCheck={false}
        aria-invalid={mend !== null || undefined}
        aria-describedby={mend === null ? undefined : `${id}-mend`}
        value={typed ?? shown}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={go}
        onKeyDown={(event) => {
          if (event.key === "Enter") go();
          if (event.key !== "Escape") return;
          event.stopPropagation();
          setTyped(null);
          setMend(null);
        }}
      />
      {mend !== null && (
        <p id={`${id}-mend`} className="fold-passed" role="alert">
          {mend}
        </p>
      )}
    </div>
  );
}

type Found = { readonly ok: true; readonly travel: number } | { readonly ok: false; readonly mend: string };

/** The travel at which a measure reads what was typed, inside the truck's own range of travel. */
function travelOf(truck: Truck, measure: StanceMeasure, typed: string, format: LengthFormat): Found {
  const read = readMeasure(measure, typed, format);
  if (!read.ok) return { ok: false, mend: `This cannot be read: ${read.mend}.` };
  const found = travelForMeasure(truck.model, measure, read.value);
  if (!found.ok) return { ok: false, mend: rangeMend(measure, found, truck, format) };
  return inTravel(truck, found.travel, format);
}

/** A travel, mm, where it lies in the truck's own range. */
function inTravel(truck: Truck, travel: number, format: LengthFormat): Found {
  const inRange = clampTravel(truck, travel);
  if (Math.abs(inRange - travel) < 1e-6) return { ok: true, travel: inRange };
  const { droop, bump } = truck.setup.travel;
  return {
    ok: false,
    mend: `That is ${lengthText(travel, format)} of travel; the setup’s travel ends at ${lengthText(travel > 0 ? bump : droop, format)}.`,
  };
}

/** One wheel's own travel as typed, mm. */
export function wheelTravelOf(truck: Truck, typed: string, format: LengthFormat): Found {
  const read = readMeasure("travel", typed, format);
  return read.ok
    ? inTravel(truck, read.value, format)
    : { ok: false, mend: `This cannot be read: ${read.mend}.` };
}

function readMeasure(measure: StanceMeasure, typed: string, { units }: LengthFormat) {
  if (measure === "lowerArmAngle") {
    const angle = parseAngle(typed);
    return angle.ok ? { ok: true as const, value: angle.rad } : angle;
  }
  const read = parseLength(typed, units);
  return read.ok ? { ok: true as const, value: read.mm } : read;
}

function rangeMend(
  measure: StanceMeasure,
  { least, most }: { readonly least: number | null; readonly most: number | null },
  truck: Truck,
  format: LengthFormat,
): string {
  if (least === null || most === null) return "This cannot be measured on this truck.";
  return `The truck reads ${measureText(measure, least, truck, format)} to ${measureText(measure, most, truck, format)} here, over all the travel its wheels can reach.`;
}

/**
 * A stance's measure with its unit: what is over the floor no higher than it is, an air spring as its own panel tells it.
 * @param value mm, or radians of the lower arm's angle
 */
function measureText(
  measure: StanceMeasure,
  value: number,
  { setup: { airSpring } }: Truck,
  format: LengthFormat,
): string {
  if (measure === "lowerArmAngle") return angleText(value, 1);
  if (measure === "airSpringHeight" && airSpring) return airHeightText(value, airSpring, format);
  const isOverFloor = measure === "lipHeight" || measure === "frameHeight";
  return isOverFloor ? clearanceText(value, format) : lengthText(value, format);
}
