import { describe, expect, it } from "vitest";
import { standsAsTyped } from "../../../src/app/stage/partPoints.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import type { BodyPart, PartSide, Point } from "../../../src/setup/types/truckTypes.ts";
import { exampleDocument } from "../exampleText.ts";

function hose(side: PartSide, y: number): BodyPart {
  const points: Point[] = [
    [0, y, 500],
    [100, y, 520],
  ];
  return { name: "hose", kind: "path", side, radius: 5, points };
}

describe("a part of the right side", () => {
  it("is drawn where it was typed, if it was typed on the right", () => {
    expect(standsAsTyped(hose("right", -600))).toBe(true);
  });

  it("is drawn as a mirror image, if it was typed for the left", () => {
    expect(standsAsTyped(hose("right", 600))).toBe(false);
    expect(standsAsTyped(hose("both", -600))).toBe(false);
    expect(standsAsTyped(hose("left", -20))).toBe(false);
  });

  it.each([24, -24])("is measured where it is drawn, typed at y = %d in", (y) => {
    const points = [
      [0, y, 20],
      [4, y, 21],
    ];
    const body = [{ name: "hose", kind: "path", side: "right", radius: 0.1, points }];
    const made = truckOf(
      JSON.stringify({ ...exampleDocument, truck: { ...exampleDocument.truck, body } }),
      "t.json",
      null,
    );
    if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
    const { model, setup } = made.value;
    const part = setup.truck.body[0]!;
    // The study's own frame is the left-hand one: y > 0 there is outboard on the right side.
    const measuredY = -model.parts[0]!.shape.balls[1]!;
    const drawnY = 25.4 * y * (standsAsTyped(part) ? 1 : -1);
    expect(measuredY).toBeCloseTo(drawnY, 6);
  });
});
