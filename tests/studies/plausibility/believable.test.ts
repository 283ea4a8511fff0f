import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import { unusualIn } from "../../../src/studies/plausibility/unusualIn.ts";
import { assembleFrontEnd } from "../../../src/suspension/frontEnd.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { plausibleTrucks, SEED } from "../../suspension/plausibleTrucks.ts";
import { compact, modelFrom } from "./trucks.ts";

const SHARED = join(import.meta.dirname, "..", "..", "..", "shared");
const EXAMPLES = [
  "half-ton-on-air.json",
  "half-ton-limits.json",
  "compact-front-steer.json",
  "long-bed-steering-box.json",
  "flatbed-long-arms.json",
  "ordered-knuckle.json",
  "tubular-knuckle.json",
];

/** The share of believable trucks that may be found unusual. */
const FALSE_ALARMS = 0.05;

describe("a believable truck", () => {
  it.each(EXAMPLES)("of our own raises nothing, in no variant: %s", (name) => {
    const document = JSON.parse(readFileSync(join(SHARED, name), "utf8")) as {
      variants?: readonly { name: string }[];
    };
    expect(document).not.toHaveProperty("confirmed");
    for (const variant of [null, ...(document.variants ?? []).map((one) => one.name)])
      expect(unusualIn(modelFrom(document, variant)), `${variant}`).toEqual({ open: [], confirmed: [] });
  });

  it("made at random raises something in fewer than 1 of 20", () => {
    let alarms = 0;
    let trucks = 0;
    const { setup } = modelFrom(compact);
    fc.assert(
      fc.property(plausibleTrucks(), ({ input, frontEnd }) => {
        const pose = solvePose(frontEnd, 0, 0);
        if (!pose.ok) return;
        // Knuckles are drawn without a look at their arms: the pin is leaned so that the wheel stands nearly upright, and
        // the truck stands on its tires.
        const pinAngle = input.knuckle.pinAngle - 0.8 * pose.left.camber;
        const knuckle = { ...input.knuckle, pinAngle };
        if (!assembleFrontEnd({ ...input, knuckle }).ok) return;
        const built = modelOf(
          {
            ...setup,
            truck: { ...setup.truck, ...input, body: [] },
            knuckle,
            hardware: null,
            limits: null,
            floor: null,
            roll: null,
            wheel: { ...setup.wheel, offset: input.wheelOffset },
            tire: {
              kind: "dimensions",
              diameter: 711,
              sectionWidth: 240,
              treadWidth: null,
              loadedRadius: 335,
            },
          },
          "generated",
        );
        if (!built.ok) return;
        trucks += 1;
        if (isAlarm(built.value)) alarms += 1;
      }),
      SEED,
    );
    expect(trucks).toBeGreaterThan(350);
    expect(alarms / trucks).toBeLessThan(FALSE_ALARMS);
  });
});

function isAlarm(model: Model): boolean {
  return unusualIn(model).open.length > 0;
}
