import { describe, expect, it } from "vitest";
import { onPicture, type Picture, planeSeen } from "../../../../src/app/stage/handles/picturePlane.ts";
import { stagePoints } from "../../../../src/app/stage/handles/stagePoints.ts";
import type { TypedDocument } from "../../../../src/app/state/typedDocument.ts";
import { exampleDocument } from "../../exampleText.ts";

/** Pixels a mm. */
const ZOOM = 0.4;

/** A picture by the ways that x, y and z go on it, per mm: right and down. */
const picture = (...ways: readonly (readonly [number, number])[]): Picture => ({
  origin: { x: 300, y: 400 },
  axes: ways.map(([x, y]) => ({ x: ZOOM * x, y: ZOOM * y })) as unknown as Picture["axes"],
});

const FRONT = picture([0, 0], [1, 0], [0, -1]);
const SIDE = picture([-1, 0], [0, 0], [0, -1]);
const TOP = picture([0, -1], [-1, 0], [0, 0]);

describe("the plane seen", () => {
  it("is that of a view along an axis", () => {
    expect(planeSeen(FRONT)).toEqual({ across: 1, along: 2 });
    expect(planeSeen(SIDE)).toEqual({ across: 0, along: 2 });
    expect(planeSeen(TOP)).toEqual({ across: 1, along: 0 });
  });

  it("is none where the truck is turned by half a degree or more", () => {
    for (const deg of [0.5, 5, 40]) {
      const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
      expect(planeSeen(picture([sin, 0], [cos, 0], [0, -1])), `${deg}°`).toBeNull();
    }
  });
});

describe("points to move", () => {
  const front = { across: 1, along: 2 };
  const withBody = (...body: unknown[]): TypedDocument => ({
    ...exampleDocument,
    truck: { ...(exampleDocument.truck as object), body },
  });

  it("are the arms' and the tie rod's, as measured, and the body's that are not hidden", () => {
    const names = stagePoints(exampleDocument, front, ["lip"]).map(({ name }) => name);
    expect(names).toContain("upper arm, front pivot");
    expect(names).toContain("lower arm, ball joint, as measured");
    expect(names).toContain("inner tie rod end");
    expect(names).toContain("rail, outer upper corner");
    expect(names.some((name) => name.startsWith("lip"))).toBe(false);
  });

  it("have a box's corners keep each coordinate in the corner that holds it, between its other side and anywhere", () => {
    const box = { name: "rail", kind: "box", min: [-10, 5, 6], max: [10, 8, 9] };
    const corner = stagePoints(withBody(box), front, []).find(
      ({ name }) => name === "rail, inner upper corner",
    )!;
    expect(corner.at.map((mm) => mm / 25.4)).toEqual([-10, 5, 9].map((value) => expect.closeTo(value, 9)));
    expect(corner.homes.map((path) => path.at(-1))).toEqual(["min", "min", "max"]);
    expect(corner.open[1]).toEqual([-Infinity, expect.closeTo(8 * 25.4, 9)]);
    expect(corner.open[2]).toEqual([expect.closeTo(6 * 25.4, 9), Infinity]);
  });

  it("stand where a part of the right side alone stands, typed there or as its mirror image", () => {
    const right = (y: number) => ({ name: "brace", kind: "path", side: "right", points: [[0, y, 4]] });
    for (const y of [20, -20]) {
      const [point] = stagePoints(withBody(right(y)), front, []).filter(({ sort }) => sort === "body");
      expect(point!.at[1] / 25.4).toBeCloseTo(y, 9);
      expect(onPicture(FRONT, point!.seen).x).toBeCloseTo(300 - ZOOM * 20 * 25.4, 9);
    }
  });

  it("leave out one that does not read", () => {
    const lip = {
      name: "lip",
      kind: "path",
      points: [
        [0, "3 ?", 4],
        [0, 3, 5],
      ],
    };
    const names = stagePoints(withBody(lip), front, []).map(({ name }) => name);
    expect(names).not.toContain("lip, point 1 of 2");
    expect(names).toContain("lip, point 2 of 2");
  });
});
