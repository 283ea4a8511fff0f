import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { type CheckEntry, checkClearance, DEFAULT_TOLERANCE } from "../../../src/studies/reports/check.ts";
import { toleranceAt } from "../../../src/studies/search/deepTolerance.ts";
import { rangesOf } from "../../../src/studies/search/sideRange.ts";
import { worstGap } from "../../../src/studies/search/worstGap.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../../src/suspension/steering.ts";
import { stepBudget } from "../../reference/stepBudget.ts";
import { wholeTrucks } from "../../reference/wholeTrucks.ts";
import { runs } from "../../runs.ts";

const trucks = wholeTrucks(41);

/** Nodes that do where the turn about the steering axis is taken in parts; twice as many and more where it is not. */
const MOST_NODES = { rod: 60_000, springOrShock: 120_000 } as const;

function assembled(setup: Setup): Model {
  const made = modelOf(setup, "at the border of reach");
  if (!made.ok) throw new TypeError("it assembles");
  return made.value;
}

/** Checked within so many looks at a clock that is read about each half millisecond of work. */
function checkedWithin(model: Model, looks: number): readonly CheckEntry[] {
  const { parts, cutShort } = checkClearance(model, { budget: stepBudget(looks) });
  expect(cutShort).toBeUndefined();
  for (const { part, gap, bound } of parts)
    expect(gap - bound, part).toBeLessThanOrEqual(toleranceAt(gap, DEFAULT_TOLERANCE) + 1e-9);
  return parts;
}

/** A truck's own front end with one box, told from where the left wheel's center is at the end of its bump reach. */
function withBox(n: number, [x, y, z]: Vec3): Model {
  const { setup } = trucks[n]!;
  const { reach, innerAtRest, centerHeightAtRest } = trucks[n]!.frontEnd.left;
  expect(reach.bump.travel).toBeLessThan(setup.travel.bump);
  const center: Vec3 = [
    innerAtRest[0],
    setup.truck.lowerArm.ballJoint[1],
    centerHeightAtRest + reach.bump.travel,
  ];
  const middle = [center[0] + x, center[1] + y, center[2] + z] as const;
  const [min, max] = [-90, 90].map((off) => middle.map((v) => v + off) as unknown as Vec3) as [Vec3, Vec3];
  const body = [{ name: "box", side: "both", kind: "box", min, max }] as const;
  const { hardware: _hardware, limits: _limits, airSpring: _spring, ...rest } = setup;
  return assembled({
    ...rest,
    hardware: null,
    limits: null,
    airSpring: null,
    truck: { ...setup.truck, body },
  });
}

describe("where the upper arm is stretched within the travel asked for", () => {
  it("arms, rods, springs and shocks are known to the tolerance", () => {
    const parts = checkedWithin(trucks[30]!, 6000);
    expect(parts.filter(({ part }) => part.includes("arm")).length).toBeGreaterThan(4);
  });

  const places: readonly Vec3[] = [
    [0, 0, 0],
    [150, 80, 100],
    [0, 100, 330],
    [-250, 150, 250],
    [60, 200, -60],
  ];
  it.each(places.slice(0, runs(3, places.length)))(
    "a box pressed in about there is known to 2 mm or less (%d, %d, %d)",
    (...place) => {
      const [box] = checkedWithin(withBox(30, place), 4000);
      expect(box!.gap).toBeLessThan(0);
    },
  );
});

/** A truck whose steering box swings 55°, which stretches the tie rod within the lock. @param keeps its box's own limit too */
function swungFar(n: number, keeps: boolean): Model {
  const { setup } = trucks[n]!;
  const { steering } = setup.truck;
  if (steering.type !== "pitman") throw new TypeError("it has a pitman arm");
  const limits = { ...setup.limits!, ...(keeps ? {} : { steeringStroke: null }) };
  return assembled({
    ...setup,
    limits,
    truck: { ...setup.truck, steering: { ...steering, swing: (55 * Math.PI) / 180 } },
  });
}

describe("where the tie rod is stretched within the lock", () => {
  const tolerances = { asked: 0.1, finer: 0.01, border: 0.1 };

  // Truck 40's swing makes the gap fall like a square root there; no pose of truck 11 keeps all its limits.
  it.each([
    [40, false, ["upper arm", "lower arm", "rotor to lower arm"]],
    [11, true, ["tie rod", "lower arm", "upper arm", "air spring"]],
  ] as const)(
    "truck %d: every part is known to the tolerance before its nodes are spent",
    (n, keeps, names) => {
      const model = swungFar(n, keeps);
      const { start, wheel, ...range } = rangesOf(model, [], false).left;
      for (const name of names.slice(0, runs(2, names.length))) {
        const pair = model.pairs.find((one) => one.side === "left" && one.name === name)!;
        if (pair.kind !== "rod" && pair.kind !== "springOrShock") throw new TypeError("it moves");
        const { gap, bound, cells } = worstGap({ ...wheel, pair }, range, tolerances, start)!;
        expect(gap - bound, name).toBeLessThanOrEqual(toleranceAt(gap, DEFAULT_TOLERANCE));
        expect(cells, name).toBeLessThan(MOST_NODES[pair.kind]);
      }
    },
  );
});

describe("where the idler is stretched within the lock", () => {
  const ends = new Float64Array(INNER_ENDS_ROW);

  it.each([6, 7].slice(0, runs(1, 2)))("truck %d: every part is known to the tolerance", (n) => {
    const { setup } = trucks[n]!;
    const { steering } = setup.truck;
    if (steering.type !== "pitman") throw new TypeError("it has a pitman arm");
    const model = assembled({
      ...setup,
      limits: { ...setup.limits!, steeringStroke: null },
      truck: { ...setup.truck, steering: { ...steering, swing: 1 } },
    });
    expect(model.frontEnd.steering.innerEndsTo(ends, -1)).toBe(PoseStatus.IdlerOutOfReach);
    checkedWithin(model, 40_000);
  });
});
