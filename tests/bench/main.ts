import { readFileSync } from "node:fs";
import { readSetup } from "../../src/setup/readSetup.ts";
import { checkClearance } from "../../src/studies/check.ts";
import { gapsAt } from "../../src/studies/gapsAt.ts";
import { modelOf } from "../../src/studies/model.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../src/suspension/poseRow.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { INNER_ENDS_ROW } from "../../src/suspension/steering.ts";
import { EngineMechanism } from "../reference/mujoco/engine.ts";
import { mechanismXml } from "../reference/mujoco/mechanismXml.ts";
import { drawnTrucks, inputOf } from "../suspension/drawnTrucks.ts";
import { assembled } from "../suspension/trucks.ts";
import { line, measure } from "./measure.ts";

/** `npm run bench`: whole jobs in one run, so that their ratios mean something on a noisy machine. */
const FILE = "shared/half-ton-on-air.json";
const read = readSetup(readFileSync(new URL(`../../${FILE}`, import.meta.url), "utf8"), FILE);
if (!read.ok) throw new TypeError(`${FILE} does not read`);
const built = modelOf(read.value.setup, FILE);
if (!built.ok) throw new TypeError(`${FILE} does not go together`);
const { model } = built;

/** A grid of poses of one side, arm angle × steer, through the bare kernel. */
const ARMS = 200;
const STEERS = 100;
function poses(): number {
  const { row } = model.frontEnd.left;
  const out = new Float64Array(POSE_ROW);
  const ends = new Float64Array(INNER_ENDS_ROW);
  let sum = 0;
  for (let s = 0; s < STEERS; s++) {
    model.frontEnd.steering.innerEndsTo(ends, -1 + (2 * s) / (STEERS - 1));
    for (let i = 0; i < ARMS; i++) {
      const angle = -0.2 + (0.4 * i) / (ARMS - 1);
      poseRowTo(out, 0, row, Math.cos(angle), Math.sin(angle), ends[0]!, ends[1]!, ends[2]!);
      sum += out[POSE.wheelCenter]! + out[POSE.wheelAxis + 2]!;
    }
  }
  return sum;
}

const pose = solvePose(model.frontEnd, 80, -0.9);
if (!pose.ok) throw new TypeError("the demo's pose is out of reach");

// The engine poses a drawn truck's whole front end (both sides) at once; so does a pair of kernel calls.
const truck = drawnTrucks[0]!;
const drawn = assembled(inputOf(truck));
const engine = await EngineMechanism.load(mechanismXml(truck));
const stops = [-40, 0, 40].flatMap((travel) => [-0.8, 0.8].map((steer) => ({ travel, steer })));
const settled = measure(
  "physics engine, front end settled",
  stops.length,
  () => {
    let sum = 0;
    for (const { travel, steer } of stops) {
      const wanted = solvePose(drawn, travel, steer);
      if (!wanted.ok) throw new TypeError("the drawn truck's pose is out of reach");
      engine.drive("drive.left.lowerArm", wanted.left.armAngle);
      engine.drive("drive.right.lowerArm", wanted.right.armAngle);
      engine.driveSteering(truck, steer);
      for (let chunk = 0; chunk < 40; chunk++) {
        engine.step(100);
        // 1e-9 m: the thousandth of a micrometer that the tests compare points to, and no finer.
        if (engine.residual < 1e-9) break;
      }
      sum += engine.site("left.wheelCenter")[0];
    }
    return sum;
  },
  10,
  2,
);
engine.free();

const kernel = measure("pose kernel, one side", ARMS * STEERS, poses);
const gaps = measure("all gaps at one pose, demo", 1, () =>
  gapsAt(model, pose).reduce((s, g) => s + g.gap, 0),
);
const check = measure("certified check, demo", 1, () => checkClearance(model)!.worst!.gap, 10, 3);

console.log(
  `${"job".padEnd(34)}${"size".padStart(8)}${["least", "median", "spread"].map((h) => `${h} each`.padStart(18)).join("")}  checksum`,
);
for (const measured of [kernel, settled, gaps, check]) console.log(line(measured));
const perPose = (2 * kernel.median) / kernel.size;
const perSettled = settled.median / settled.size;
console.log(
  `\npose: ${((kernel.median * 1e6) / kernel.size).toFixed(0)} ns a side; the physics engine takes ${Math.round(perSettled / perPose)}× as long for both sides`,
);
