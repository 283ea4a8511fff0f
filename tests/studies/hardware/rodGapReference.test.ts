import { describe, expect, it } from "vitest";
import type { PartInput } from "../../../src/gaps/partShape.ts";
import { mirrorY, type Vec3 } from "../../../src/geometry/vec.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";
import { partSolid, ringSolid, solidModeler } from "../../reference/mesh/solids.ts";
import { tessellationError } from "../../reference/mesh/tessellatedRing.ts";
import { runs } from "../../runs.ts";

const SIDES = 256;
/** mm. The modeler keeps part of its work in 32 bits. */
const ROUNDING = 2e-4;

const POSES = [
  [0, 0],
  [80, 0.8],
  [-85, -0.9],
  [30, -0.4],
] as const;

describe(`moving parts against the solid modeler manifold-3d 3.5, solids in ${SIDES} sides`, () => {
  it.each(POSES.slice(0, runs(2, POSES.length)))("travel %f mm, steer %f", async (travel, steer) => {
    const top = await solidModeler();
    const setup = demoSetup("narrow hub face");
    const hardware = hardwareSetup({ caliper: null });
    const model = assembledModel({ ...setup, hardware });
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) throw new TypeError("the demo truck takes this pose");
    const gaps = gapsAt(model, pose);
    const { rotor } = hardware;
    const ring = (solid: "ring" | "rotor") => {
      if (solid === "ring") {
        const profile: [number, number][] = [];
        for (let i = 0; i < model.tire.profile.length; i += 2)
          profile.push([model.tire.profile[i]!, model.tire.profile[i + 1]!]);
        return { name: "ring", profile, barrelRadius: model.tire.barrelRadius };
      }
      const outboard = setup.wheel.offset - rotor!.inboard;
      const r = rotor!.diameter / 2;
      const x = outboard - rotor!.thickness;
      // A hole too small to matter: the modeler's disk begins beside the axis.
      return {
        name: "rotor",
        profile: [
          [x, r],
          [outboard - 1, r],
          [outboard, r],
        ] as [number, number][],
        barrelRadius: 0.01,
      };
    };
    let compared = 0;
    for (const side of ["left", "right"] as const) {
      const wheel = pose[side];
      const { upperArm, lowerArm } = setup.truck;
      const onSide = (p: Vec3): Vec3 => (side === "right" ? mirrorY(p) : p);
      const path = (radius: number, ...points: Vec3[]): Extract<PartInput, { kind: "path" }> => ({
        name: "rod",
        kind: "path",
        radius,
        points,
      });
      const parts = {
        "upper arm": path(
          hardware.upperArm.radius,
          onSide(upperArm.frontPivot),
          wheel.upperBallJoint,
          onSide(upperArm.rearPivot),
        ),
        "lower arm": path(
          hardware.lowerArm.radius,
          onSide(lowerArm.frontPivot),
          wheel.lowerBallJoint,
          onSide(lowerArm.rearPivot),
        ),
        "tie rod": path(hardware.tieRod.radius, wheel.tieRodInner, wheel.tieRodOuter),
        "tie rod end": path(hardware.tieRodEnd.radius, wheel.tieRodOuter),
        "upper ball joint": path(hardware.upperBallJoint.radius, wheel.upperBallJoint),
        "lower ball joint": path(hardware.lowerBallJoint.radius, wheel.lowerBallJoint),
        knuckle: path(hardware.knuckle.radius, wheel.lowerBallJoint, wheel.upperBallJoint),
      };
      for (const [name, part] of Object.entries(parts)) {
        for (const solid of ["ring", "rotor"] as const) {
          const entry = gaps.find(
            (e) => e.side === side && e.part === (solid === "ring" ? name : `rotor to ${name}`),
          );
          if (entry === undefined) continue;
          const about = ring(solid);
          const a = ringSolid(
            top,
            about as never,
            { center: wheel.wheelCenter, axis: wheel.wheelAxis },
            SIDES,
          );
          const { solid: b, error } = partSolid(top, part);
          const far = a.minGap(b, entry.gap + 5);
          a.delete();
          b.delete();
          const off = tessellationError(about as never, SIDES) + error + ROUNDING;
          expect(entry.gap).toBeGreaterThan(1);
          expect(Math.abs(far - entry.gap)).toBeLessThan(off);
          compared++;
        }
      }
    }
    expect(compared).toBe(2 * (7 + 6));
  });
});
