import fc from "fast-check";
import { addScaled, type Vec3 } from "../../src/geometry/vec.ts";
import type { BodyPart } from "../../src/setup/types/truckTypes.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../src/studies/model/model.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { type GeneratedTruck, plausibleTrucks } from "../suspension/plausibleTrucks.ts";
import { exampleSetup } from "./demoModel.ts";
import { flatMesh } from "./flatMesh.ts";
import { between } from "./gapCases.ts";
import { hardwareSetup } from "./hardwareSetup.ts";

const DEG = Math.PI / 180;

/** Lip, liner and rail about where the left wheel stands, farther or nearer, and a box that may be deep in the tire. */
function bodies([x, y, z]: Vec3): fc.Arbitrary<readonly BodyPart[]> {
  return fc
    .record({
      lip: between(60, 140),
      over: between(330, 440),
      rail: between(160, 300),
      box: fc.tuple(between(-250, 250), between(-200, 200), between(-100, 420)),
      size: fc.tuple(between(20, 90), between(20, 90), between(20, 90)),
    })
    .map(({ lip, over, rail, box, size }): readonly BodyPart[] => [
      {
        name: "lip",
        side: "both",
        kind: "path",
        radius: 3,
        points: [-2, -1.2, -0.5, 0, 0.5, 1.2, 2].map(
          (a): Vec3 => [x + over * Math.sin(a), y + lip, z + over * Math.cos(a)],
        ),
      },
      {
        name: "liner",
        side: "both",
        kind: "mesh",
        ...flatMesh(
          [-0.8, -0.4, 0.4, 0.8].flatMap((a): Vec3[] =>
            [-150, 150].map(
              (w): Vec3 => [x + (over + 30) * Math.sin(a), y + w, z + (over + 30) * Math.cos(a)],
            ),
          ),
          [0, 2, 4].flatMap((k) => [[k, k + 1, k + 2] as const, [k + 1, k + 3, k + 2] as const]),
        ),
      },
      {
        name: "rail",
        side: "both",
        kind: "box",
        min: [x - 700, y - rail - 80, z + 60],
        max: [x + 700, y - rail, z + 220],
      },
      {
        name: "box",
        side: "both",
        kind: "box",
        min: [x + box[0] - size[0], y + box[1] - size[1], z + box[2] - size[2]],
        max: [x + box[0] + size[0], y + box[1] + size[1], z + box[2] + size[2]],
      },
    ]);
}

/** Every block of a setup: body, moving parts, every kind of limit, shock and air spring; travel to 140 mm each way. */
function setups({ input, frontEnd }: GeneratedTruck): fc.Arbitrary<Setup> {
  const whole = exampleSetup("half-ton-limits.json");
  const rest = solvePose(frontEnd, 0, 0);
  if (!rest.ok) throw new TypeError("an assembled truck stands at rest");
  const [bx, by, bz] = input.lowerArm.ballJoint;
  const seat: Vec3 = addScaled(
    addScaled([0, 0, 0], input.lowerArm.ballJoint, 0.6),
    addScaled(addScaled([0, 0, 0], input.lowerArm.frontPivot, 0.5), input.lowerArm.rearPivot, 0.5),
    0.4,
  );
  const { steering } = input;
  const full = steering.type === "rack" ? steering.stroke : steering.swing;
  const joint = (least: number, most: number) =>
    fc.record({
      cone: between(least * DEG, most * DEG),
      inOut: fc.constant(null),
      foreAft: fc.constant(null),
      stud: fc.constant(null),
      housing: fc.constant(null),
    });
  const end = fc.record({ misalignment: between(18 * DEG, 45 * DEG), stud: fc.constant(null) });
  return fc
    .record({
      body: bodies(rest.left.wheelCenter),
      droop: between(-140, -50),
      bump: between(50, 140),
      upperBallJoint: joint(8, 30),
      lowerBallJoint: joint(12, 35),
      outerTieRodEnd: end,
      innerTieRodEnd: end,
      bumpStop: between(0.5, 1.1),
      droopStrap: between(0.5, 1.1),
      shockRoom: between(30, 150),
      shockOn: fc.constantFrom("lowerArm" as const, "knuckle" as const),
      steeringStop: between(15 * DEG, 45 * DEG),
      stroke: between(0.6, 1.1),
      springRoom: between(30, 130),
      rolls: fc.boolean(),
    })
    .map((made): Setup => {
      const height = 220;
      return {
        ...whole,
        units: "mm",
        truck: {
          ...whole.truck,
          upperArm: input.upperArm,
          lowerArm: input.lowerArm,
          steering,
          body: made.body,
        },
        knuckle: input.knuckle,
        wheel: { ...whole.wheel, offset: input.wheelOffset },
        hardware: hardwareSetup(),
        alignment: { toe: input.toe, targets: null },
        adjusters: null,
        travel: { droop: made.droop, bump: made.bump },
        stances: [],
        floor: null,
        order: null,
        roll: made.rolls ? whole.roll : null,
        limits: {
          upperBallJoint: made.upperBallJoint,
          lowerBallJoint: made.lowerBallJoint,
          outerTieRodEnd: made.outerTieRodEnd,
          innerTieRodEnd: made.innerTieRodEnd,
          bumpStop: made.bump * made.bumpStop,
          droopStrap: made.droop * made.droopStrap,
          shock: {
            bodyMount: [bx + 50, by - 130, bz + 340],
            lowerMount: made.shockOn === "lowerArm" ? [bx + 50, by - 90, bz + 10] : [-20, -60, 20],
            on: made.shockOn,
            compressed: 330 - made.shockRoom,
            extended: 330 + made.shockRoom,
            diameter: 50,
          },
          steeringStop: made.steeringStop,
          steeringStroke: full * made.stroke,
        },
        airSpring: {
          ...whole.airSpring!,
          armMount: seat,
          bodyMount: [seat[0], seat[1] - 20, seat[2] + height],
          leastHeight: height - made.springRoom,
          greatestHeight: height + made.springRoom,
          diameter: 140,
        },
      };
    });
}

/** Random layouts with every block, whose limits cut the range; the same seed gives the same trucks. */
export function wholeTrucks(count: number, seed = 20_26): Model[] {
  const some = plausibleTrucks()
    .chain(setups)
    .map((setup) => modelOf(setup, "generated"))
    .filter((made) => made.ok);
  return fc.sample(some, { numRuns: count, seed }).map((made) => {
    if (!made.ok) throw new TypeError("filtered above");
    return made.value;
  });
}
