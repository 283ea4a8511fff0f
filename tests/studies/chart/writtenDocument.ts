import type { BodyPart } from "../../../src/setup/types/truckTypes.ts";
import type { Setup } from "../../../src/setup/types/types.ts";

const degrees = (rad: number) => (rad / Math.PI) * 180;

/** A generated truck without hardware, written as a file in millimeters. */
export function writtenDocument(setup: Setup): Record<string, unknown> {
  const { truck, knuckle, wheel, tire, travel, alignment, allowance, units } = setup;
  const { steering } = truck;
  const { kind: _, ...ownTire } = tire;
  const { center: __, ...plainWheel } = wheel;
  return {
    format: "wellsweep-setup",
    version: 1,
    units,
    truck: {
      upperArm: truck.upperArm,
      lowerArm: truck.lowerArm,
      steering: steering.type === "rack" ? steering : { ...steering, swing: degrees(steering.swing) },
      body: truck.body.map(writtenPart),
    },
    knuckle: { ...knuckle, pinAngle: degrees(knuckle.pinAngle) },
    wheel: plainWheel,
    tire: Object.fromEntries(Object.entries(ownTire).filter(([, value]) => value !== null)),
    alignment: { toe: degrees(alignment.toe) },
    travel,
    allowance,
  };
}

function writtenPart(part: BodyPart): Record<string, unknown> {
  if (part.kind !== "mesh") return { ...part };
  const { positions, triangles, ...rest } = part;
  return { ...rest, vertices: threes([...positions]), triangles: threes([...triangles]) };
}

function threes(numbers: readonly number[]): number[][] {
  return Array.from({ length: numbers.length / 3 }, (_, i) => numbers.slice(3 * i, 3 * i + 3));
}
