import fc from "fast-check";
import type { JigSetup } from "../../../src/setup/types/asBuiltTypes.ts";
import { DEFAULT_JIG, DEFAULT_JIG_TOLERANCES } from "../../../src/setup/types/defaults.ts";
import type { BuiltKnuckle } from "../../../src/studies/jig/jigReadings.ts";
import { between } from "../../reference/gapCases.ts";

export const DEG = Math.PI / 180;

/** The jig of a setup that says nothing of it. */
export const jig: JigSetup = { ...DEFAULT_JIG, tolerances: DEFAULT_JIG_TOLERANCES };

/** An invented knuckle, mm. */
export const ordered: BuiltKnuckle = {
  span: 267.2,
  pinHeight: 142.2,
  pinLead: 0,
  pinAngle: 8.4 * DEG,
  hubFace: 155.6,
  toe: 0,
  steeringArm: [-148.6, -25.4, 33],
};

/** Knuckles anybody might build, toe built in or not. */
export const knuckles: fc.Arbitrary<BuiltKnuckle> = fc
  .record({
    span: between(180, 330),
    pinHeight: between(20, 230),
    pinLead: between(-25, 25),
    pinAngle: between(-5 * DEG, 16 * DEG),
    hubFace: between(90, 250),
    toe: between(-4 * DEG, 4 * DEG),
    ahead: between(90, 200),
    isBehind: fc.boolean(),
    out: between(-70, 40),
    up: between(-60, 120),
  })
  .map(({ ahead, isBehind, out, up, ...rest }) => ({
    ...rest,
    steeringArm: [isBehind ? -ahead : ahead, out, up] as const,
  }));
