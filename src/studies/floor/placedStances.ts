import { describeValue } from "../../setup/describeValue.ts";
import type { MeasuredStance } from "../../setup/floorTypes.ts";
import type { Setup, SetupIssue, StanceSetup } from "../../setup/types.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength } from "../../units/formatLength.ts";
import type { StandingTruck } from "./floorPose.ts";
import { type TravelFound, travelForMeasure } from "./travelForMeasure.ts";

/**
 * Every stance of a setup with its travel, in the file's order: those typed by a measure are placed on the assembled
 * truck. A setup whose stances were placed before is placed anew. Issues for a measure that no travel in reach gives.
 */
export function placedStances(
  truck: StandingTruck,
  file: string,
): { readonly stances: readonly StanceSetup[]; readonly issues: readonly SetupIssue[] } {
  const { setup } = truck;
  const { measuredStances } = setup;
  if (measuredStances.length === 0) return { stances: setup.stances, issues: [] };
  const byMeasure = new Set(measuredStances.map(({ name }) => name));
  const stances = setup.stances.filter(({ name }) => !byMeasure.has(name));
  const issues: SetupIssue[] = [];
  for (const stance of measuredStances) {
    const found = travelForMeasure(truck, stance.measure, stance.value);
    if (found.ok) stances.splice(stance.index, 0, { name: stance.name, travel: found.travel });
    else issues.push(issueOf(stance, found, setup, file));
  }
  return { stances, issues };
}

function issueOf(
  { index, measure, typed }: MeasuredStance,
  { least, most }: Extract<TravelFound, { readonly ok: false }>,
  setup: Setup,
  file: string,
): SetupIssue {
  const isAngle = measure === "lowerArmAngle";
  const text = (value: number) =>
    isAngle ? formatAngle(value, 1) : formatLength(value, { units: setup.units });
  const issue = { file, key: `stances[${index}].${measure}`, value: describeValue(typed) };
  if (least === null || most === null) return { ...issue, mend: "cannot be read at any travel in reach" };
  const mend = `no travel in reach gives it; between ${text(least)} and ${text(most)} one does`;
  return { ...issue, mend, ...(isAngle ? {} : { range: { least, most } }) };
}
