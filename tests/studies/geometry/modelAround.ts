import type { Setup } from "../../../src/setup/types/types.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";
import type { FrontEndInput } from "../../../src/suspension/inputs.ts";
import { demoModel } from "../demoModel.ts";

const demo = demoModel().setup;

/** A front end as a whole truck: what the numbers do not need is the demo truck's. */
export function modelAround(input: FrontEndInput, setup: Partial<Setup> = {}, wheelbase = 3000): Model {
  const { upperArm, lowerArm, steering, knuckle } = input;
  const built = modelOf(
    {
      ...demo,
      truck: { wheelbase, upperArm, lowerArm, steering, body: [] },
      knuckle,
      wheel: { ...demo.wheel, offset: input.wheelOffset },
      tire: {
        kind: "dimensions",
        diameter: 2 * input.loadedRadius + 20,
        sectionWidth: 240,
        treadWidth: null,
        loadedRadius: input.loadedRadius,
      } as Setup["tire"],
      alignment: { toe: input.toe, targets: null },
      hardware: null,
      // The demo truck's other stances may be out of this one's reach.
      stances: [{ name: "driving", travel: 0 }],
      ...setup,
    },
    "made up",
  );
  if (!built.ok) throw new Error(built.issues.map((issue) => `${issue.key}: ${issue.mend}`).join("\n"));
  return built.value;
}
