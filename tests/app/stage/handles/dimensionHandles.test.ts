import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  carriedBy,
  type DimensionHandle,
  dimensionHandles,
  nudgedBy,
} from "../../../../src/app/stage/handles/dimensionHandles.ts";
import { onPicture, type Picture } from "../../../../src/app/stage/handles/picturePlane.ts";
import { addScaled, type Vec3 } from "../../../../src/geometry/vec.ts";
import type { KnuckleSetup } from "../../../../src/setup/types/types.ts";
import { solvePose } from "../../../../src/suspension/solvePose.ts";
import { example, truckOf } from "../../../studies/loads/loadTruck.ts";

const { model } = truckOf(example("tubular-knuckle.json"));
const { knuckle } = model.setup;
const IN = { units: "in" } as const;
const solved = solvePose(model.frontEnd, 30, 0.4);
if (!solved.ok) throw new Error("the example stands there");
const of = (changed: Partial<KnuckleSetup> = {}, side: "left" | "right" = "left") =>
  dimensionHandles({ ...knuckle, ...changed }, solved, side, IN);

/** A picture turned about Z, then leaned toward the eye, as a parallel projection has it. */
function pictureFrom(turn: number, lean: number, zoom: number): Picture {
  const seen = ([x, y, z]: Vec3) => ({
    x: zoom * (-x * Math.sin(turn) + y * Math.cos(turn)),
    y: -zoom * (z * Math.cos(lean) - (x * Math.cos(turn) + y * Math.sin(turn)) * Math.sin(lean)),
  });
  return { origin: { x: 400, y: 300 }, axes: [seen([1, 0, 0]), seen([0, 1, 0]), seen([0, 0, 1])] };
}

/** Pixels that a mark goes by when its fields change by so many units. */
function pixelsOf(handle: DimensionHandle, picture: Picture, units: readonly number[]) {
  const to = handle.ways.reduce<Vec3>((at, { way }, i) => addScaled(at, way, units[i]!), handle.seen);
  const [a, b] = [onPicture(picture, handle.seen), onPicture(picture, to)];
  return [b.x - a.x, b.y - a.y] as const;
}

describe("the knuckle's dimensions in the picture", () => {
  it.each(["left", "right"] as const)(
    "end where the %s part has them: a changed field moves its mark its way",
    (side) => {
      const before = of({}, side);
      const changes: readonly [key: string, way: number, changed: Partial<KnuckleSetup>][] = [
        ["hubFace", 0, { hubFace: knuckle.hubFace + 1 }],
        ["pinHeight", 0, { pinHeight: knuckle.pinHeight + 1 }],
        ["span", 0, { span: knuckle.span + 1 }],
        ["pinAngle", 0, { pinAngle: knuckle.pinAngle + Math.PI / 180 }],
        ...([0, 1, 2] as const).map((i): [string, number, Partial<KnuckleSetup>] => {
          const moved = knuckle.steeringArm.map((n, k) => (k === i ? n + 1 : n)) as [number, number, number];
          return ["steeringArm", i, { steeringArm: moved }];
        }),
      ];
      for (const [key, at, changed] of changes) {
        const [from, to] = [before, of(changed, side)].map((all) => all.find((one) => one.key === key)!);
        const expected = addScaled(from!.seen, from!.ways[at]!.way, 1);
        // A degree turns the mark on an arc: 0.04 mm off its way.
        for (const i of [0, 1, 2] as const) expect(Math.abs(to!.seen[i] - expected[i])).toBeLessThan(0.04);
      }
    },
  );

  it("follow the hand: what is carried over the picture is what the field changes by, however it is turned", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.double({ min: 0.2, max: 8, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        (turn, lean, zoom, by) => {
          const picture = pictureFrom(turn, lean, zoom);
          for (const handle of of().filter(({ ways }) => ways.length === 1)) {
            const back = carriedBy(handle, picture, ...pixelsOf(handle, picture, [by]));
            if (back) expect(back[0]).toBeCloseTo(by, 6);
          }
          // The tie rod end goes under the hand in every picture: two of its three coordinates follow.
          const arm = of().find(({ key }) => key === "steeringArm")!;
          const moved = carriedBy(arm, picture, by, 7)!;
          expect(moved.filter((n) => n !== 0).length).toBeLessThanOrEqual(2);
          const [right, down] = pixelsOf(arm, picture, moved);
          expect(right).toBeCloseTo(by, 6);
          expect(down).toBeCloseTo(7, 6);
        },
      ),
    );
  });

  it("are not carried where they are seen from their end, and keys go by the picture", () => {
    const side = pictureFrom(Math.PI / 2, 0, 1);
    const straight = solvePose(model.frontEnd, 0, 0);
    if (!straight.ok) throw new Error("the example stands");
    const handles = dimensionHandles({ ...knuckle, pinAngle: 0 }, straight, "left", IN);
    const named = (key: string) => handles.find((one) => one.key === key)!;
    // From outboard the pin is a point.
    expect(carriedBy(named("hubFace"), side, 10, 0)).toBeNull();
    expect(nudgedBy(named("hubFace"), side, 1, 0)).toBeNull();
    expect(nudgedBy(named("span"), side, 0, 1)).toMatchObject({ at: 0, steps: 1 });
    expect(nudgedBy(named("span"), side, 0, -1)).toMatchObject({ at: 0, steps: -1 });
    // Its way forward lies to the left there.
    expect(nudgedBy(named("steeringArm"), side, -1, 0)).toMatchObject({ at: 0, steps: 1 });
  });

  it("say what they are", () => {
    expect(of().map(({ name, value }) => `${name} ${value}`)).toEqual([
      "hub face 6 5/16 in",
      "pin angle 8.5°",
      "pin height 5 3/8 in",
      "span 10 5/8 in",
      "steering arm x −5 7/8 in, y −1 1/8 in, z 1 3/8 in",
    ]);
  });
});
