import type { Setup } from "../../src/setup/types/types.ts";

const degrees = (rad: number) => (rad / Math.PI) * 180;

/** The same rack-steered truck with paths alone, written as a file in millimeters. */
export function documentInMm(setup: Setup): Record<string, unknown> {
  const { truck, knuckle, wheel, tire, travel, alignment } = setup;
  if (truck.steering.type !== "rack" || tire.kind !== "size")
    throw new Error("documentInMm: not such a truck");
  const { center: _, ...plainWheel } = wheel; // not in a file unless it was given
  return {
    format: "wellsweep-setup",
    version: 1,
    units: "mm",
    truck: {
      upperArm: truck.upperArm,
      lowerArm: truck.lowerArm,
      steering: truck.steering,
      body: truck.body.map((part) => {
        if (part.kind !== "path") throw new Error("documentInMm: not a path");
        return { name: part.name, kind: part.kind, radius: part.radius, points: part.points };
      }),
    },
    knuckle: { ...knuckle, pinAngle: degrees(knuckle.pinAngle) },
    wheel: plainWheel,
    tire: { size: tire.size, loadedRadius: tire.loadedRadius },
    alignment: { toe: degrees(alignment.toe) },
    travel,
    allowance: setup.allowance,
  };
}
