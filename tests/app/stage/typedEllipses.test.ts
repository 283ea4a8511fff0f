import { describe, expect, it } from "vitest";
import { typedEllipses } from "../../../src/app/stage/typedEllipses.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { exampleDocument } from "../exampleText.ts";

function ellipsesOf(truck: object) {
  const read = resolveSetup({ ...exampleDocument, truck: { ...exampleDocument.truck, ...truck } }, "t.json");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return typedEllipses(read.value);
}

describe("points with a ± beside their numbers", () => {
  it("are drawn as far as they may be off, along the axes that have one", () => {
    const { lowerArm, body } = exampleDocument.truck;
    const ballJoint = [0.35, "26.6 ± 1/8", { value: 8.6, within: "2 mm" }];
    const lip = { ...body[0], points: [["14 ± 1/2", 34, 24], ...(body[0]!.points ?? []).slice(1)] };
    expect(ellipsesOf({ lowerArm: { ...lowerArm, ballJoint }, body: [lip, body[1]] })).toEqual([
      {
        ...{ name: "", isAssumed: false, isTyped: true },
        at: [0.35, 26.6, 8.6].map((inches) => expect.closeTo(25.4 * inches, 9)),
        axes: [
          [0, 0, 0],
          [0, expect.closeTo(3.175, 9), 0],
          [0, 0, expect.closeTo(2, 9)],
        ],
      },
      {
        ...{ name: "", isAssumed: false, isTyped: true },
        at: [14, 34, 24].map((inches) => expect.closeTo(25.4 * inches, 9)),
        axes: [
          [expect.closeTo(12.7, 9), 0, 0],
          [0, 0, 0],
          [0, 0, 0],
        ],
      },
    ]);
  });

  it("are those of a mesh too, at the corner they are typed at", () => {
    const mesh = {
      name: "plate",
      kind: "mesh",
      vertices: [
        [0, 30, 20],
        [10, 30, "20 ± 1/4"],
        [0, 30, 30],
      ],
      triangles: [[0, 1, 2]],
    };
    expect(ellipsesOf({ body: [mesh] })).toEqual([
      expect.objectContaining({
        at: [10, 30, 20].map((inches) => expect.closeTo(25.4 * inches, 9)),
        axes: [
          [0, 0, 0],
          [0, 0, 0],
          [0, 0, expect.closeTo(6.35, 9)],
        ],
      }),
    ]);
  });

  it("are none of plain numbers", () => {
    expect(ellipsesOf({})).toEqual([]);
  });
});
