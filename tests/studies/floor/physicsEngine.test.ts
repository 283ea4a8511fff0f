import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addScaled, dot, length, normalize, scale, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import { floorAt } from "../../../src/studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../../src/studies/floor/wheelTravelsInRoll.ts";
import type { Side } from "../../../src/suspension/frontEnd.ts";
import { solveApart } from "../../../src/suspension/solvePose.ts";
import { EngineMechanism } from "../../reference/mujoco/engine.ts";
import { wheelsOverFloorXml } from "../../reference/mujoco/wheelsOverFloor.ts";
import { drawnTrucks, inputOf } from "../../suspension/drawnTrucks.ts";
import { modelAround } from "../geometry/modelAround.ts";

/**
 * The whole front end at unequal travels against a general-purpose rigid-body engine (mujoco-js 0.0.7): both sides'
 * linkage is built from the drawing, its lower arms are driven apart and the steering turned, and where the engine's
 * wheels then stand, the floor is found by another way: the height of a circle over a plane of normal n is
 * c·n − R √(1 − (a·n)²) (its support function), and the lean at which both wheels' are alike is bisected. The engine's
 * own collision detection then looks at a thin disk on each wheel over our floor.
 */

const RADIUS = 350;
/** Meters or radians: largest equality violation left (1e-9 mm). */
const SETTLED = 1e-12;
const DEG = Math.PI / 180;
/** mm. */
const BELOW = 1;
const SIDES = ["left", "right"] as const;

const CASES = [
  { name: "left up, right down, steered left", left: 45, right: -30, steer: 0.6 },
  { name: "right wheel over a curb", left: -10, right: 40, steer: 0 },
  { name: "left wheel down in a hole at right lock", left: -60, right: 0, steer: -1 },
];

interface EngineWheel {
  readonly center: Vec3;
  readonly axis: Vec3;
}

function wheelOf(engine: EngineMechanism, side: Side): EngineWheel {
  const center = engine.site(`${side}.wheelCenter`);
  // The end of the spin axis was drawn 1000 mm outboard of the wheel center.
  return { center, axis: scale(sub(engine.site(`${side}.spinEnd`), center), 1 / 1000) };
}

const heightOf = ({ center, axis }: EngineWheel, n: Vec3) =>
  dot(center, n) - RADIUS * Math.sqrt(1 - dot(axis, n) ** 2);

/** The floor, level lengthwise, on which both circles stand: its lean about X, + = the body's left side up. */
function leanUnder(left: EngineWheel, right: EngineWheel): { roll: number; normal: Vec3; offset: number } {
  const normalAt = (roll: number): Vec3 => [0, Math.sin(roll), Math.cos(roll)];
  const excess = (roll: number) => heightOf(left, normalAt(roll)) - heightOf(right, normalAt(roll));
  // The left wheel is the higher over a plane that leans with the body's left side up.
  let [low, high] = [-0.4, 0.4];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (low + high);
    if (excess(middle) > 0) high = middle;
    else low = middle;
  }
  const normal = normalAt(low);
  return { roll: low, normal, offset: heightOf(left, normal) };
}

/** The lowest point of a circle toward a plane: where its support function is taken. */
function lowestOf({ center, axis }: EngineWheel, n: Vec3): Vec3 {
  return addScaled(center, normalize(addScaled(n, axis, -dot(n, axis))), -RADIUS);
}

describe.each(drawnTrucks.map((truck) => [truck.name, truck] as const))("%s", (_, truck) => {
  const model = modelAround({ ...inputOf(truck), loadedRadius: RADIUS });
  let engine: EngineMechanism;
  beforeAll(async () => {
    engine = await EngineMechanism.load(wheelsOverFloorXml(truck, RADIUS));
  });
  afterAll(() => engine.free());

  function drive(travels: Readonly<Record<Side, number>>, steer: number) {
    const pose = solveApart(model.frontEnd, travels, steer);
    if (!pose.ok) throw new Error(`out of reach: ${pose.side}, ${pose.along} from ${pose.startsAt}`);
    engine.placeMocap([0, 0, -5000], 0); // out of the way
    for (const side of SIDES) engine.drive(`drive.${side}.lowerArm`, pose[side].armAngle);
    engine.driveSteering(truck, steer);
    for (let chunk = 0; chunk < 40 && !(chunk > 0 && engine.residual < SETTLED); chunk++) engine.step(100);
    expect(engine.residual).toBeLessThan(SETTLED);
    return pose;
  }

  it.each(CASES)("stands on the floor the engine's wheels stand on: $name", ({ left, right, steer }) => {
    const travels = { left, right };
    const pose = drive(travels, steer);
    const floor = floorAt(model, travels, steer)!;
    const wheels = { left: wheelOf(engine, "left"), right: wheelOf(engine, "right") };
    const found = leanUnder(wheels.left, wheels.right);
    expect(floor.roll).toBeCloseTo(found.roll, 9);
    expect(length(sub(floor.plane.normal, found.normal))).toBeLessThan(1e-9);
    expect(floor.plane.offset).toBeCloseTo(found.offset, 6);
    for (const side of SIDES) {
      expect(length(sub(pose[side].wheelCenter, wheels[side].center))).toBeLessThan(1e-7);
      expect(length(sub(floor[side].contactPatch, lowestOf(wheels[side], found.normal)))).toBeLessThan(1e-6);
      expect(floor[side].camber).toBeCloseTo(-Math.asin(dot(wheels[side].axis, found.normal)), 9);
      // Straight ahead the engine's wheel has risen by the travel asked for: that closes the loop on the arm angle.
      if (steer === 0) expect(wheels[side].center[2] - truck.wheelCenter[2]).toBeCloseTo(travels[side], 7);
    }
  });

  it.each(CASES)("has both disks touch it where the engine's collision detection has them: $name", (pose) => {
    const travels = { left: pose.left, right: pose.right };
    drive(travels, pose.steer);
    const floor = floorAt(model, travels, pose.steer)!;
    const { normal, offset } = floor.plane;
    // A little below, so that the disks are near it and do not touch. The engine's plane has Z for its normal, and a
    // positive turn about X brings that toward −Y.
    engine.placeMocap(scale(normal, offset - BELOW), -floor.roll);
    for (const side of SIDES) {
      const [nearest] = engine.contactsOf(`${side}.wheel`).sort((a, b) => a.distance - b.distance);
      if (nearest === undefined) throw new Error("the engine sees no floor");
      expect(nearest.distance).toBeCloseTo(BELOW, 5);
      const midway = addScaled(floor[side].contactPatch, normal, -0.5 * BELOW);
      expect(length(sub(nearest.at, midway))).toBeLessThan(1e-4);
    }
  });

  it("leans by the roll that its travels were asked for", () => {
    for (const roll of [2.5 * DEG, -1 * DEG]) {
      const asked = wheelTravelsInRoll(model, 5, roll);
      if (!asked.ok) throw new Error("out of reach");
      expect(asked.travels.left + asked.travels.right).toBeCloseTo(10, 9);
      drive(asked.travels, 0);
      expect(leanUnder(wheelOf(engine, "left"), wheelOf(engine, "right")).roll).toBeCloseTo(roll, 8);
    }
  });
});
