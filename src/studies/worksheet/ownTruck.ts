import type { Vec3 } from "../../geometry/vec.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT } from "../../setup/worksheet/assumedLayout.ts";
import { LIP, type ReadingAsk } from "../../setup/worksheet/worksheetLines.ts";
import { readingsToAdd } from "../../setup/worksheet/worksheetState.ts";
import { tapeText } from "../../units/plainLengthText.ts";
import { ASSUMED_LIP_POINTS, ASSUMED_POINTS, ASSUMED_SIZES } from "../measure/assumedTruck.ts";

export interface OwnTruckOptions {
  readonly units: LengthUnit;
  readonly steering: "rack" | "pitman";
  /** The full list of readings, or the shortest that gives a first verdict. */
  readonly isFull: boolean;
}

/** mm. What of the assumed truck no reading goes to. */
export const ASSUMED = {
  /** Lower to upper ball joint, pin above the lower one, and steering axis to hub face: as the assumed points have them. */
  span: 263.8,
  pinHeight: 123.8,
  hubFace: 184.2,
  steeringArm: [-149.2, -22.2, 38.1],
  pinAngleDeg: 8.75,
  rimDiameter: 381,
  rimWidth: 203.2,
  tireSize: "P235/70R15",
  stroke: 69.9,
  swingDeg: 36,
  travel: { droop: -88.9, bump: 88.9 },
  lipRadius: 3.2,
  rail: { bottom: 400, top: 550, width: 76, ahead: 900 },
} as const;

/**
 * The setup of a truck that somebody is about to measure: all of it is the assumed layout's and marked so, and its readings are
 * there to be filled in. Lengths on the marks of a tape.
 */
export function ownTruckDocument({
  units,
  steering,
  isFull,
}: OwnTruckOptions): Readonly<Record<string, unknown>> {
  const text = (mm: number) => tapeText(mm, units);
  const point = (at: Vec3) => at.map(text);
  const place = (name: string) => point(ASSUMED_POINTS.get(name)!);
  const arm = (name: "upperArm" | "lowerArm") => ({
    frontPivot: place(`${name}.frontPivot`),
    rearPivot: place(`${name}.rearPivot`),
    ballJoint: place(`${name}.ballJoint`),
  });
  const turning = (name: "pitman" | "idler") => ({
    pivot: place(`steering.${name}.pivot`),
    end: place(`steering.${name}.end`),
  });
  const innerEnd = place("steering.innerEnd");
  const { rail } = ASSUMED;
  const face = ASSUMED_SIZES.frameWidth / 2;
  return {
    format: "wellsweep-setup",
    version: 1,
    name: "My truck",
    units,
    truck: {
      upperArm: arm("upperArm"),
      lowerArm: arm("lowerArm"),
      steering:
        steering === "rack"
          ? { type: "rack", innerEnd, stroke: text(ASSUMED.stroke) }
          : {
              type: "pitman",
              innerEnd,
              swing: ASSUMED.swingDeg,
              pitman: turning("pitman"),
              idler: turning("idler"),
            },
      body: [
        {
          name: LIP,
          kind: "path",
          radius: text(ASSUMED.lipRadius),
          points: [...ASSUMED_LIP_POINTS.values()].map(point),
        },
        {
          name: "frame rail",
          kind: "box",
          min: point([-rail.ahead, face - rail.width, rail.bottom]),
          max: point([rail.ahead, face, rail.top]),
        },
      ],
    },
    knuckle: {
      span: text(ASSUMED.span),
      pinHeight: text(ASSUMED.pinHeight),
      pinAngle: ASSUMED.pinAngleDeg,
      hubFace: text(ASSUMED.hubFace),
      steeringArm: point(ASSUMED.steeringArm),
    },
    wheel: {
      rimDiameter: text(ASSUMED.rimDiameter),
      rimWidth: text(ASSUMED.rimWidth),
      backspacing: text(ASSUMED_SIZES["wheel.backspacing"]),
    },
    tire: { size: ASSUMED.tireSize },
    travel: { droop: text(ASSUMED.travel.droop), bump: text(ASSUMED.travel.bump) },
    readings: readingsToAdd({}, isFull) satisfies readonly ReadingAsk[],
    fromExample: { of: ASSUMED_LAYOUT },
  };
}
