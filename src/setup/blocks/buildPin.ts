import type * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_MEMBERS, SAME_POINT } from "../reading/limits.ts";
import type { PinSetup, PinStep } from "../types/buildTypes.ts";

/** The pin, as typed. */
export const pinField = block("the pin by its steps, and where the wheel bearings carry on it", {
  material: textField(
    "name of its material, of build.materials or of the catalog; default the build's material",
  ).optional(),
  steps: list(
    "stretches of one diameter from the pin's root outward, each where the last one ends, never thicker farther out",
    block("a stretch of the pin of one diameter", {
      from: lengthField("its inner end, along the pin from the steering axis, + outboard, as hubFace"),
      to: lengthField("its outer end, measured the same way"),
      diameter: lengthField("diameter", "positive"),
      fillet: lengthField(
        "radius at its inner end, where it meets the thicker step inboard of it or the body; default sharp, taken as 1/50 of the diameter",
        "positive",
      ).optional(),
    }),
    { least: 1, most: MAX_MEMBERS },
  ),
  bearings: block(
    "where the wheel bearings carry, along the pin from the steering axis, + outboard, as hubFace",
    {
      inner: lengthField("effective center of the inner bearing"),
      outer: lengthField("effective center of the outer bearing"),
    },
  ).optional(),
  forHubFace: lengthField(
    "hub-face distance that steps and bearings are drawn for: with another knuckle.hubFace all but the root moves along with it; left out: they stay where they are",
    "positive",
  ).optional(),
});

/** The pin in mm, moved along with the hub face. Refuses steps that leave a gap, overlap or grow outboard, and bearings off the pin. @param hubFace mm; null = it is wrong already */
export function resolvePin(
  typed: z.infer<typeof pinField>,
  reading: BlockReading,
  hubFace: number | null,
): PinSetup {
  const steps = typed.steps.map(({ from, to, diameter, fillet }, i): PinStep => {
    const step = {
      from: reading.length(from, "steps", i, "from"),
      to: reading.length(to, "steps", i, "to"),
      diameter: reading.length(diameter, "steps", i, "diameter"),
      fillet: reading.lengthOr(null, fillet, "steps", i, "fillet"),
    };
    if (!(step.to > step.from)) reading.issue(["steps", i, "to"], to, "must be farther outboard than from");
    return step;
  });
  if (steps.length === 0) reading.issue(["steps"], typed.steps, "must have at least one step");
  steps.forEach((step, i) => {
    const before = steps[i - 1];
    if (before === undefined) return;
    const as = typed.steps[i]!;
    if (Math.abs(step.from - before.to) > SAME_POINT)
      reading.issue(["steps", i, "from"], as.from, `must be where step ${i - 1} ends, at its to`);
    if (step.diameter > before.diameter)
      reading.issue(
        ["steps", i, "diameter"],
        as.diameter,
        `must not be more than that of step ${i - 1}: a pin gets thinner outboard, so that the bearings go on`,
      );
    else if (step.fillet !== null && step.fillet > (before.diameter - step.diameter) / 2)
      reading.issue(
        ["steps", i, "fillet"],
        as.fillet,
        "must not be more than the step is high, half the difference of the diameters",
      );
  });
  const bearings = typed.bearings ? resolveBearings(typed.bearings, steps, reading.inside("bearings")) : null;
  const drawnFor = reading.lengthOr(null, typed.forHubFace, "forHubFace");
  const drawn = { material: typed.material ?? null, steps, bearings, forHubFace: drawnFor };
  if (drawnFor === null || hubFace === null) return drawn;
  const moved = movedPin(drawn, hubFace - drawnFor);
  const first = moved.steps[0];
  if (first && !(first.to > first.from))
    reading.issue(
      ["forHubFace"],
      typed.forHubFace,
      "is so much more than knuckle.hubFace that nothing is left of the first step; draw the pin anew for this hub face",
    );
  return moved;
}

/** A pin whose hub sits farther along it, mm, + outboard: only its root stays. */
function movedPin(pin: PinSetup, by: number): PinSetup {
  const { steps, bearings } = pin;
  return {
    ...pin,
    steps: steps.map((step, i) => ({
      ...step,
      from: i === 0 ? step.from : step.from + by,
      to: step.to + by,
    })),
    bearings: bearings && { inner: bearings.inner + by, outer: bearings.outer + by },
  };
}

function resolveBearings(
  typed: NonNullable<z.infer<typeof pinField>["bearings"]>,
  steps: readonly PinStep[],
  reading: BlockReading,
) {
  const inner = reading.length(typed.inner, "inner");
  const outer = reading.length(typed.outer, "outer");
  if (!(outer > inner)) reading.issue(["outer"], typed.outer, "must be farther outboard than inner");
  const [root, tip] = [steps[0]?.from ?? 0, steps.at(-1)?.to ?? 0];
  for (const [key, at] of [
    ["inner", inner],
    ["outer", outer],
  ] as const)
    if (!(at >= root && at <= tip))
      reading.issue([key], typed[key], "must stand on the pin, between the ends of its steps");
  return { inner, outer };
}
