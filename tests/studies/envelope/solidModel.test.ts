import type { Manifold } from "manifold-3d";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Envelope, envelopeOf } from "../../../src/studies/envelope/envelopeOf.ts";
import { stanceRange } from "../../../src/studies/envelope/envelopeRange.ts";
import { meshVolume } from "../../../src/studies/section/outline.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { ringSolid, solidModeler } from "../../reference/mesh/solids.ts";
import { tessellationError } from "../../reference/mesh/tessellatedRing.ts";
import { runs } from "../../runs.ts";
import { demoModel } from "../demoModel.ts";

/** Sides of the flat-sided ring, and poses united: each flat-sided ring lies inside the round one. */
const SIDES = 72;
const POSES = runs(13, 25);

const model = demoModel();
const range = stanceRange(40);
const profile = model.tire.profile;
const ring = {
  name: "demo",
  profile: Array.from({ length: profile.length / 2 }, (_, i): [number, number] => [
    profile[2 * i]!,
    profile[2 * i + 1]!,
  ]),
  barrelRadius: model.tire.barrelRadius,
};

describe("against the union of posed rings by manifold-3d, one stance lock to lock", () => {
  let union: Manifold;
  let envelope: Envelope;
  let solid: Manifold;
  let top: Awaited<ReturnType<typeof solidModeler>>;

  beforeAll(async () => {
    top = await solidModeler();
    const rings = Array.from({ length: POSES }, (_, i) => {
      const pose = solvePose(model.frontEnd, range.travelLow, -1 + (2 * i) / (POSES - 1));
      if (!pose.ok) throw new RangeError("out of reach");
      return ringSolid(top, ring, { center: pose.left.wheelCenter, axis: pose.left.wheelAxis }, SIDES);
    });
    union = top.Manifold.union(rings);
    for (const one of rings) one.delete();
    const made = envelopeOf(model, "left", range);
    if (!made.ok) throw new RangeError(made.reason);
    envelope = made.envelope;
    const mesh = new top.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(envelope.mesh.positions),
      triVerts: envelope.mesh.triangles.slice(),
    });
    solid = new top.Manifold(mesh);
  });

  afterAll(() => {
    union?.delete();
    solid?.delete();
  });

  test("the modeler takes the surface as a solid, of the volume that its triangles say", () => {
    expect(solid.status()).toBe("NoError");
    const volume = meshVolume(envelope.mesh);
    expect(Math.abs(solid.volume() - volume)).toBeLessThan(1e-5 * volume);
  });

  test("what of the union lies outside the surface is next to nothing", () => {
    const rest = union.subtract(solid);
    // The barrel's side of a flat-sided ring stands inward of the round one by the tessellation error.
    const error = tessellationError(ring, SIDES);
    expect(rest.volume()).toBeLessThan(0.02 * error * union.surfaceArea());
    rest.delete();
  });

  test("the surface holds no more than the union and a coat of its tolerance", () => {
    const more = solid.volume() - union.volume();
    // Flat sides and the scallops between poses take from the union, up to this deep.
    const step = scallop();
    const coat = envelope.outside + tessellationError(ring, SIDES) + step;
    expect(more).toBeGreaterThan(0);
    expect(more).toBeLessThan(coat * union.surfaceArea());
  });

  /** Half the way of the fastest point from one pose to the next: no point of the swept space is farther from the union. */
  function scallop(): number {
    let most = 0;
    for (let i = 0; i + 1 < POSES; i++) {
      const [a, b] = [i, i + 1].map((k) => {
        const pose = solvePose(model.frontEnd, range.travelLow, -1 + (2 * k) / (POSES - 1));
        if (!pose.ok) throw new RangeError("out of reach");
        return pose.left;
      });
      const slide = Math.hypot(...a!.wheelCenter.map((v, k) => v - b!.wheelCenter[k]!));
      const turn = Math.hypot(...a!.wheelAxis.map((v, k) => v - b!.wheelAxis[k]!));
      most = Math.max(most, 0.5 * (slide + 1.01 * turn * model.ring.ballRadius));
    }
    return most;
  }
});
