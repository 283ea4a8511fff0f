import { describe, expect, it } from "vitest";
import type { Setup } from "../../../src/setup/types/types.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { hardwareSetup } from "../../reference/hardwareSetup.ts";
import { narrowestHubFace } from "../../reference/narrowestHubFace.ts";

const { knuckle } = demoSetup();

/** The demo truck without its body, with moving parts; its knuckle changed. */
function truck(change: Partial<Setup["knuckle"]> = {}, hardware = {}, allowance = 6): Setup {
  const setup = demoSetup();
  return {
    ...setup,
    truck: { ...setup.truck, body: [] },
    knuckle: { ...knuckle, ...change },
    hardware: hardwareSetup({ caliper: null, ...hardware }),
    allowance,
  };
}

/** The gap the check reports between rotor and lower ball joint. */
function rotorGap(setup: Setup): number {
  const model = assembledModel(setup);
  const pairs = model.pairs.filter(
    ({ name, side }) => name === "rotor to lower ball joint" && side === "left",
  );
  return checkClearance({ ...model, pairs }).worst!.gap;
}

describe("the closed form of the rotor's end", () => {
  it("worked by hand: pin level, H 100, rotor 300 × 25, 45 inboard, ball 28, allowance 6", () => {
    // The ball joint's center stands under the pin at the steering axis, the disk spans it: 45 + 25 + 28 + 6.
    const setup = truck(
      { pinAngle: 0, pinHeight: 100, pinLead: 0 },
      { rotor: { diameter: 300, thickness: 25, inboard: 45 } },
    );
    expect(narrowestHubFace({ setup })).toBeCloseTo(104, 12);
  });

  it("worked by hand: a leaning pin carries the ball joint outboard by H sin a", () => {
    // a = 30°, H 120: along the pin 60, from its axis 120 cos 30° = 103.9 < 150, so 60 + 45 + 25 + 34.
    const setup = truck(
      { pinAngle: Math.PI / 6, pinHeight: 120, pinLead: 0 },
      { rotor: { diameter: 300, thickness: 25, inboard: 45 } },
    );
    expect(narrowestHubFace({ setup })).toBeCloseTo(164, 10);
  });

  it("worked by hand: past the edge of the disk by 16 of 34 needed, the rest is √(34² − 16²) = 30", () => {
    const setup = truck(
      { pinAngle: 0, pinHeight: 156, pinLead: 0 },
      { rotor: { diameter: 280, thickness: 25, inboard: 45 } },
    );
    expect(narrowestHubFace({ setup })).toBeCloseTo(45 + 25 + 30, 12);
  });

  it("is where the reported gap is the allowance, over the disk and past its edge", () => {
    for (const pinHeight of [110, 136.5, 146, 155]) {
      for (const pinLead of [0, 12]) {
        const setup = truck({ pinHeight, pinLead });
        const hubFace = narrowestHubFace({ setup })!;
        const at = truck({ pinHeight, pinLead, hubFace });
        expect(rotorGap(at)).toBeCloseTo(setup.allowance, 5);
        const narrower = truck({ pinHeight, pinLead, hubFace: hubFace - 2 });
        expect(rotorGap(narrower)).toBeLessThan(setup.allowance);
      }
    }
  });

  it("is none without a rotor, and −Infinity where the rotor passes the ball joint", () => {
    expect(narrowestHubFace({ setup: { ...demoSetup(), hardware: null } })).toBeNull();
    expect(narrowestHubFace({ setup: truck({}, { rotor: null }) })).toBeNull();
    const small = { rotor: { diameter: 150, thickness: 20, inboard: 40 } };
    expect(narrowestHubFace({ setup: truck({ pinHeight: 140 }, small) })).toBe(Number.NEGATIVE_INFINITY);
  });
});
