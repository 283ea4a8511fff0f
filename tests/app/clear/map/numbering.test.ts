import { describe, expect, it } from "vitest";
import { MAP_BOX, mapFrameOf, snapped } from "../../../../src/app/clear/map/mapFrame.ts";
import { demoSetup } from "../../../reference/demoModel.ts";

const DROOP = -95;
const BUMP = 89;

describe("where a pose stands on the map", () => {
  const frame = mapFrameOf(DROOP, BUMP);

  it("left lock is at the left, bump on top: the way the wheels and the truck go", () => {
    expect([frame.x(1), frame.x(-1)]).toEqual([MAP_BOX.left, MAP_BOX.width - MAP_BOX.right]);
    expect([frame.y(BUMP), frame.y(DROOP)]).toEqual([MAP_BOX.top, MAP_BOX.height - MAP_BOX.bottom]);
    expect(frame.x(0)).toBe(0.5 * (frame.x(1) + frame.x(-1)));
  });

  it("and back is back; what is beyond the edge is at the edge", () => {
    for (const [travel, steer] of [
      [0, 0],
      [-31.7, 0.42],
      [BUMP, -1],
    ] as const) {
      expect(frame.travelAt(frame.y(travel))).toBeCloseTo(travel, 9);
      expect(frame.steerAt(frame.x(steer))).toBeCloseTo(steer, 12);
    }
    expect([frame.travelAt(-50), frame.travelAt(1e4)]).toEqual([BUMP, DROOP]);
    expect([frame.steerAt(-50), frame.steerAt(1e4)]).toEqual([1, -1]);
  });
});

describe("a pose that is pressed", () => {
  const setup = {
    ...demoSetup(),
    stances: [{ name: "aired out", travel: 82 }],
    travel: { droop: DROOP, bump: BUMP },
  };
  const press = (travel: number, steer: number) => snapped(travel, steer, setup, 2);

  it.each([
    [[81.1, 0.5], [82, 0.5], "a named height takes what is near it"],
    [[77, 0.5], [78, 0.5], "else it is a whole step"],
    [[500, 0.5], [BUMP, 0.5], "within the travel"],
    [[-500, 0.5], [DROOP, 0.5], "at both ends"],
    [[0, 0.039], [0, 0], "nearly straight is straight"],
    [[0, -0.039], [0, 0], "either way"],
    [[0, 0.317], [0, 0.32], "else it is a whole percent"],
  ] as const)("%j is %j: %s", ([travel, steer], pose, _why) => {
    // A zero's sign is no matter.
    expect(press(travel, steer).map((value) => value + 0)).toEqual(pose);
  });
});
