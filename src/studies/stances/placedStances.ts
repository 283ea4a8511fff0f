import type { Setup, SetupIssue, StanceSetup } from "../../setup/types/types.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import type { StandingTruck } from "./floorPose.ts";
import { measureOutOfReach, stanceOutOfReach } from "./stanceIssues.ts";
import { travelForMeasure } from "./travelForMeasure.ts";

/**
 * Every stance of a setup with its travel, in the file's order: those typed by a measure are placed on the assembled
 * truck. A setup whose stances were placed before is placed anew. Issues for a measure that no travel in reach gives,
 * and for a travel that a wheel cannot stand at straight ahead.
 */
export function placedStances(
  truck: StandingTruck,
  file: string,
): { readonly stances: readonly StanceSetup[]; readonly issues: readonly SetupIssue[] } {
  const { setup, frontEnd } = truck;
  const { measuredStances } = setup;
  const byMeasure = new Set(measuredStances.map(({ name }) => name));
  const stances = setup.stances.filter(({ name }) => !byMeasure.has(name));
  const issues = outOfReach(stances, setup, frontEnd, file);
  if (measuredStances.length === 0) return { stances: setup.stances, issues };
  for (const stance of measuredStances) {
    const found = travelForMeasure(truck, stance.measure, stance.value);
    if (found.ok) stances.splice(stance.index, 0, { name: stance.name, travel: found.travel });
    else issues.push(measureOutOfReach(file, stance, found, setup.units));
  }
  return { stances, issues };
}

/** An issue for each stance typed by travel that either wheel cannot stand at. */
function outOfReach(
  stances: readonly StanceSetup[],
  { measuredStances, units }: Setup,
  { left, right }: FrontEnd,
  file: string,
): SetupIssue[] {
  if (stances.every(({ travel }) => travel === 0)) return []; // as measured: there it stands
  const [droops, bumps] = (["droop", "bump"] as const).map((end) => {
    const ends = [
      { side: "left", ...left.reach[end] },
      { side: "right", ...right.reach[end] },
    ] as const;
    return Math.abs(ends[0].travel) <= Math.abs(ends[1].travel) ? ends[0] : ends[1];
  });
  const range = { least: droops!.travel, most: bumps!.travel };
  const taken = new Set(measuredStances.map(({ index }) => index));
  let index = -1;
  return stances.flatMap(({ travel }) => {
    do index++;
    while (taken.has(index));
    if (travel >= range.least && travel <= range.most) return [];
    const { side, status } = travel < range.least ? droops! : bumps!;
    return [stanceOutOfReach({ file, index }, travel, range, `${side} ${jointOf(status)}`, units)];
  });
}
