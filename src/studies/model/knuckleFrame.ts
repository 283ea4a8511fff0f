import { GAP, GAP_ROW, partGapTo } from "../../gaps/partGap.ts";
import { type PartInput, partShapeOf } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { CaliperFrame, KnuckleSetup } from "../../setup/types/types.ts";

/**
 * The gap between a solid about the wheel axis and a part that rides with it, once and for all: a `GAP` row in
 * the knuckle frame. @param part in the frame named. @param wheelOffset + = mounting face outboard of center.
 */
export function rideGap(
  ring: RingShape,
  part: PartInput,
  frame: CaliperFrame,
  knuckle: KnuckleSetup,
  wheelOffset: number,
): Float64Array {
  const { pinLead, pinHeight, pinAngle, hubFace } = knuckle;
  const cos = Math.cos(pinAngle);
  const sin = Math.sin(pinAngle);
  const wheel = wheelIn(frame, knuckle, wheelOffset);
  if (frame === "knuckle") return newRow(ring, part, wheel);
  const row = hubRow(ring, part, wheel).slice();
  for (let at = GAP.point; at < GAP_ROW; at += 3) {
    const y = hubFace + row[at + 1]!;
    const z = row[at + 2]!;
    row[at] = row[at]! + pinLead;
    row[at + 1] = y * cos + z * sin;
    row[at + 2] = pinHeight - y * sin + z * cos;
  }
  return row;
}

function newRow(ring: RingShape, part: PartInput, wheel: Float64Array): Float64Array {
  const row = new Float64Array(GAP_ROW);
  partGapTo(row, 0, ring, wheel, 0, partShapeOf(part, false));
  return row;
}

/** Rows in the hub frame, the one asked for last at the end. */
const hubRows = new Map<string, Float64Array>();
const KEPT = 32;

/** The same, once as long as ring, part and wheel are alike: no number of the knuckle or the truck changes what is mounted on the hub. */
function hubRow(ring: RingShape, part: PartInput, wheel: Float64Array): Float64Array {
  const key = JSON.stringify([ring.outline, part, [...wheel]]);
  const row = hubRows.get(key) ?? newRow(ring, part, wheel);
  hubRows.delete(key);
  hubRows.set(key, row);
  if (hubRows.size > KEPT) hubRows.delete(hubRows.keys().next().value!);
  return row;
}

/** That gap told by `coarse` too large at most, or `beat` where it is not below that; mm. */
export function roughRideGap(
  ring: RingShape,
  part: PartInput,
  frame: CaliperFrame,
  knuckle: KnuckleSetup,
  wheelOffset: number,
  beat: number,
  coarse: number,
): number {
  const wheel = wheelIn(frame, knuckle, wheelOffset);
  return partGapTo(new Float64Array(GAP_ROW), 0, ring, wheel, 0, partShapeOf(part, false), beat, coarse);
}

/** The wheel's center and axis in a frame. */
function wheelIn(
  frame: CaliperFrame,
  { pinLead, pinHeight, pinAngle, hubFace }: KnuckleSetup,
  wheelOffset: number,
): Float64Array {
  if (frame === "hub") return Float64Array.from([0, -wheelOffset, 0, 0, 1, 0]);
  const cos = Math.cos(pinAngle);
  const sin = Math.sin(pinAngle);
  const along = hubFace - wheelOffset;
  return Float64Array.from([pinLead, along * cos, pinHeight - along * sin, 0, cos, -sin]);
}
