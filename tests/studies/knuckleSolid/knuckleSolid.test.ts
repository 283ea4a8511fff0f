import type { Manifold, ManifoldToplevel } from "manifold-3d";
import { beforeAll, describe, expect, it } from "vitest";
import { dot, length, sub } from "../../../src/geometry/vec.ts";
import { knuckleSolid, type SolidBody } from "../../../src/studies/knuckleSolid/knuckleSolid.ts";
import { pinAxis, pinProfile } from "../../../src/studies/knuckleSolid/pinProfile.ts";
import { roundMembers } from "../../../src/studies/knuckleSolid/roundMembers.ts";
import { meshBounds, meshVolume } from "../../../src/studies/section/outline.ts";
import { solidModeler } from "../../reference/mesh/solids.ts";
import { BUILD, KNUCKLE } from "./buildCase.ts";

const named = (name: string) => knuckleSolid(BUILD, KNUCKLE).find((body) => body.name === name)!;
const member = (name: string) => roundMembers(BUILD, KNUCKLE).find((one) => one.name === name)!;

describe("what ends are fitted to", () => {
  it("members at the pin are notched to its step there, at the angle of the axes", () => {
    const [end, other] = member("lower post").ends;
    expect(end.fits.map(({ to }) => to)).toEqual(["pin"]);
    expect(end.fits[0]!.cutter).toMatchObject({ radius: 25.4 });
    expect(end.fits[0]!.angle).toBeCloseTo(Math.PI / 2 - KNUCKLE.pinAngle, 9);
    expect([other.fits, other.past]).toEqual([[], 0]);
  });

  it("later members are notched to earlier ones they meet", () => {
    const [root, free] = member("brace").ends;
    expect(root.fits.map(({ to }) => to)).toEqual(["lower post"]);
    expect(free.fits).toEqual([]);
  });

  it("at a corner the first runs past the joint by what the second takes up", () => {
    const corner = {
      ...BUILD,
      pin: null,
      plates: [],
      joints: [...BUILD.joints, { name: "out", at: [0, 100, 240] as const }],
      members: [
        { kind: "tube", name: "post", from: "low", to: "high", diameter: 40, wall: 4, material: null },
        { kind: "tube", name: "beam", from: "high", to: "out", diameter: 30, wall: 3, material: null },
      ] as const,
    };
    const [post, beam] = roundMembers(corner, KNUCKLE);
    expect(post!.ends.map(({ past }) => past)).toEqual([0, 15]);
    expect(beam!.ends[0].fits.map(({ to }) => to)).toEqual(["post"]);
  });

  it("a member on a plate ends at its face", () => {
    const [plate] = BUILD.plates;
    const onPlate = {
      ...BUILD,
      pin: null,
      joints: [
        { name: "stand", at: [-60, 30, 150] as const },
        { name: "away", at: [-60, 90, 150] as const },
      ],
      members: [
        { kind: "bar", name: "stub", from: "stand", to: "away", diameter: 10, material: null },
      ] as const,
    };
    const [stub] = roundMembers(onPlate, KNUCKLE);
    expect(stub!.ends[0].fits.map(({ to }) => to)).toEqual(["caliper bracket"]);
    const body = knuckleSolid(onPlate, KNUCKLE).find(({ name }) => name === "stub")!;
    expect(meshBounds([body.mesh]).min[1]).toBeCloseTo(30 + plate!.thickness / 2, 9);
  });
});

describe("bodies", () => {
  it("the pin turns about its axis by its steps, fillets added", () => {
    const pin = pinAxis(BUILD, KNUCKLE);
    const { positions } = named("pin").mesh;
    const along = (i: number) =>
      dot(sub([positions[i]!, positions[i + 1]!, positions[i + 2]!], pin!.origin), pin!.axis);
    const lengths = Array.from({ length: positions.length / 3 }, (_, i) => along(3 * i));
    expect(Math.min(...lengths)).toBeCloseTo(-30, 9);
    expect(Math.max(...lengths)).toBeCloseTo(175, 9);
    const steps = Math.PI * (25.4 ** 2 * 90 + 19.05 ** 2 * 50 + 12.7 ** 2 * 65);
    // Pappus: a fillet is a square less a quarter circle, turned about the pin.
    const fillet = (f: number, r: number) => {
      const square = f * f * (r + f / 2);
      const quarter = ((Math.PI * f * f) / 4) * (r + f - (4 * f) / (3 * Math.PI));
      return 2 * Math.PI * (square - quarter);
    };
    const facets = (72 / (2 * Math.PI)) * Math.sin((2 * Math.PI) / 72);
    const expected = facets * (steps + fillet(3, 19.05) + fillet(2, 12.7));
    // An arc of a fillet has eight straight pieces.
    expect(meshVolume(named("pin").mesh) / expected).toBeCloseTo(1, 4);
  });

  it("a fillet larger than its shoulder is cut off at the shoulder", () => {
    const profile = pinProfile([
      { from: 0, to: 10, diameter: 20, fillet: null },
      { from: 10, to: 30, diameter: 18, fillet: 4 },
    ]);
    expect(Math.max(...profile.map(([, radius]) => radius))).toBe(10);
    expect(profile.filter(([at]) => at > 10 && at < 14).length).toBeGreaterThan(3);
    const steps = profile.slice(1).map(([at], i) => at - profile[i]![0]);
    expect(Math.min(...steps)).toBeGreaterThanOrEqual(0);
  });

  it("a plate is its area by its thickness, less its holes", () => {
    const hole = (72 / 2) * Math.sin((2 * Math.PI) / 72) * 6.35 ** 2;
    expect(meshVolume(named("caliper bracket").mesh)).toBeCloseTo(
      (70 * (80 + 60) * 0.5 - 2 * hole) * 9.525,
      6,
    );
  });

  it("a build of nothing has no bodies", () => {
    expect(knuckleSolid({ ...BUILD, pin: null, members: [], plates: [] }, KNUCKLE)).toEqual([]);
  });

  describe("by the solid modeler manifold-3d", () => {
    let top: ManifoldToplevel;
    let solids: { readonly body: SolidBody; readonly solid: Manifold }[];
    beforeAll(async () => {
      top = await solidModeler();
      solids = knuckleSolid(BUILD, KNUCKLE).map((body) => {
        const { positions, triangles } = body.mesh;
        const mesh = new top.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(positions),
          triVerts: triangles,
        });
        return { body, solid: new top.Manifold(mesh) };
      });
    });

    it("each is closed and wound outward, and has the volume that we say", () => {
      expect(solids.map(({ body }) => body.name)).toEqual([
        "pin",
        "lower post",
        "upper post",
        "brace",
        "caliper bracket",
      ]);
      for (const { body, solid } of solids) {
        expect(solid.status()).toBe("NoError");
        expect(solid.volume() / meshVolume(body.mesh)).toBeCloseTo(1, 5);
      }
    });

    it("they touch, and overlap by no more than the flat sides of a round do", () => {
      let pairs = 0;
      solids.forEach(({ solid }, i) => {
        for (const other of solids.slice(i + 1)) {
          const both = solid.intersect(other.solid);
          expect(both.volume()).toBeLessThan(0.002 * Math.min(solid.volume(), other.solid.volume()));
          both.delete();
          pairs++;
        }
      });
      expect(pairs).toBe(10);
    });

    it("a notched member begins where its partner ends", () => {
      const post = solids.find(({ body }) => body.name === "upper post")!.solid;
      const pin = solids.find(({ body }) => body.name === "pin")!.solid;
      expect(post.minGap(pin, 5)).toBeLessThan(0.1);
      expect(length(sub(KNUCKLE.steeringArm, [0, 0, 60]))).toBeCloseTo(member("brace").length, 9);
    });
  });
});
