import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Truck, truckOf } from "../../../src/app/state/truck.ts";
import { KeptPoses } from "../../../src/studies/limits/keptPoses.ts";
import { limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import { uncountedSides } from "../../../src/studies/limits/limitsPastAt.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";

const SHARED = new URL("../../../shared/", import.meta.url);

/** @param rolls whether its body rolls, so that each wheel is counted for itself */
function truck(file: string, rolls: boolean): Truck {
  const document = JSON.parse(readFileSync(new URL(file, SHARED), "utf8"));
  if (!rolls) document.roll = undefined;
  const made = truckOf(JSON.stringify(document), file, null);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

describe.each([
  ["long-bed-steering-box.json", true],
  ["long-bed-steering-box.json", false],
] as const)("poses of %s that are not counted, its body rolling: %s", (file, rolls) => {
  it("are those that the search of its answer leaves out", () => {
    const { model, setup } = truck(file, rolls);
    const passed = limitsPassed(model, rolls);
    const told = { counted: 0, not: 0 };
    for (let i = 0; i <= 8; i++)
      for (let j = 0; j <= 8; j++) {
        const [travel, steer] = [
          setup.travel.droop + (i / 8) * (setup.travel.bump - setup.travel.droop),
          j / 4 - 1,
        ];
        const pose = solvePose(model.frontEnd, travel, steer);
        if (!pose.ok) continue;
        const out = uncountedSides(model, pose, ["some limit"]);
        for (const side of ["left", "right"] as const) {
          const keeps = new KeptPoses(model, side, passed, rolls).keepsAt(
            armAngleFor(model.frontEnd[side], travel),
            steer,
          );
          expect(out.includes(side), `${side} at ${travel}, ${steer}`).toBe(!keeps);
          told[keeps ? "counted" : "not"]++;
        }
        // Where every pose passes some limit, every pose is counted.
        expect(uncountedSides(model, pose, [])).toEqual([]);
      }
    expect(told.counted).toBeGreaterThan(0);
    expect(told.not).toBeGreaterThan(0);
  });
});

it("full droop at left lock of the long bed is not counted, the height it drives at is", () => {
  const { model, setup } = truck("long-bed-steering-box.json", true);
  const { limitedBy } = checkClearance(model);
  const at = (travel: number, steer: number) => {
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) throw new Error("the truck reaches this pose");
    return uncountedSides(model, pose, limitedBy);
  };
  expect(at(setup.travel.droop, 1)).toEqual(["left", "right"]);
  expect(at(0, 0)).toEqual([]);
});
