import { expect, it } from "vitest";
import type { FloorSetup } from "../../../src/setup/types/floorTypes.ts";
import { floorAt, scrubLine } from "../../../src/studies/floor/floorAt.ts";
import { LEVEL_ARMS, planarFrontEnd } from "../../suspension/planarWishbone.ts";
import { modelAround } from "../geometry/modelAround.ts";

/** Level arms, parallel and alike: upright wheels on 360 mm, contact patch at (750, 0). */
const level = planarFrontEnd(LEVEL_ARMS);
/** A 15 in rim, 190.5 mm, with a flange of 17.5 mm. */
const RIM = 208;

function modelWith(points: FloorSetup["points"]) {
  const floor: FloorSetup = { rear: "follows", lip: null, frame: null, points };
  return modelAround(level, { floor });
}

it("runs from the flat side's rim flange to the other tire's contact patch", () => {
  const model = modelWith([{ name: "rail", side: "both", at: [-500, 300, 140] }]);
  const { floor, flat, dragging } = scrubLine(model, 0, "left")!;
  // By hand: left end (750, 152), right end (−750, 0); the left side is down, so the roll is negative.
  const roll = -Math.atan((360 - RIM) / 1500);
  expect(flat).toBe("left");
  expect(floor.roll).toBeCloseTo(roll, 12);
  expect(floor.left.contactPatch[2]).toBeCloseTo(152, 9);
  const line = (y: number) => (152 * (y + 750)) / 1500;
  const clearances = floor.clearances.map(({ clearance }) => clearance);
  expect(clearances[0]).toBeCloseTo((140 - line(300)) * Math.cos(roll), 9);
  expect(clearances[1]).toBeCloseTo((140 - line(-300)) * Math.cos(roll), 9);
  expect(dragging).toEqual([]);
  expect(scrubLine(model, 0, "right")!.floor.roll).toBeCloseTo(-roll, 12);
});

it("lists what hangs to or below it, the lowest first, though all of it clears the floor on four good tires", () => {
  const model = modelWith([
    { name: "step", side: "both", at: [-900, 700, 120] },
    { name: "crossmember", side: "both", at: [80, 250, 90] },
    { name: "pan", side: "left", at: [-200, 0, 77] },
  ]);
  expect(Math.min(...floorAt(model, { left: 0, right: 0 }, 0)!.clearances.map((p) => p.clearance))).toBe(77);
  const found = scrubLine(model, 0, "left")!.dragging.map(({ name, side }) => `${name} ${side}`);
  // At 700, 250 mm the line is 147 and 101 mm high, at the middle 76: step and crossmember on the flat side alone.
  expect(found).toEqual(["step left", "crossmember left"]);
  expect(scrubLine(model, 10, "left")!.dragging.map(({ name }) => name)).toContain("pan");
  expect(scrubLine(model, 900, "left")).toBeNull();
});
