import { useId, useState } from "react";
import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { travelForMeasure } from "../../../studies/stances/travelForMeasure.ts";
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
  const id = useId();
  const setTravel = useWorkbench((s) => s.setTravel);
  const [typed, setTyped] = useState<string | null>(null);
  const [mend, setMend] = useState<string | null>(null);
  const go = () => {
    if (typed === null) return;
    const found = travelOf(truck, measure, typed, format);
    setMend(found.ok ? null : found.mend);
    if (!found.ok) return;
    setTravel(found.travel);
    setTyped(null);
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
        value={typed ?? (value === null ? "–" : measureText(measure, value, format))}
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
  if (!found.ok) return { ok: false, mend: rangeMend(measure, found, format) };
  const inRange = clampTravel(truck, found.travel);
  if (Math.abs(inRange - found.travel) < 1e-6) return { ok: true, travel: inRange };
  const { droop, bump } = truck.setup.travel;
  return {
    ok: false,
    mend: `That is ${measureText("travel", found.travel, format)} of travel; the setup’s travel ends at ${measureText("travel", found.travel > 0 ? bump : droop, format)}.`,
  };
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
  format: LengthFormat,
): string {
  if (least === null || most === null) return "This cannot be measured on this truck.";
  return `The truck reads ${measureText(measure, least, format)} to ${measureText(measure, most, format)} here, over all the travel its wheels can reach.`;
}

/** A stance's measure with its unit. @param value mm, or radians of the lower arm's angle */
function measureText(measure: StanceMeasure, value: number, format: LengthFormat): string {
  return measure === "lowerArmAngle" ? angleText(value, 1) : lengthText(value, format);
}
