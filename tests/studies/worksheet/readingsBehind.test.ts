import { expect, it } from "vitest";
import { resolveShown } from "../../../src/setup/editing/resolveShown.ts";
import { withMine } from "../../../src/setup/exampleMarks.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { KnownParts } from "../../../src/setup/types/knownParts.ts";
import { readCount } from "../../../src/setup/worksheet/assumedLayout.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { unusualDoubts } from "../../../src/studies/wording/unusualReport.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const begun = ownTruckDocument({ units: "in", steering: "rack", isFull: false });
const PIN_ANGLE: KeyPath = ["knuckle", "pinAngle"];

function modelFrom(document: unknown, variant: string | null = null) {
  const read = resolveShown(document, "truck.json", variant, new Map(), new KnownParts());
  const model = read.ok ? modelOf(read.value, "truck.json") : null;
  if (!model?.ok) throw new Error("no truck");
  return model.value;
}

const typed = (document: unknown, path: KeyPath, value: unknown) =>
  withMine(setAt(document, path, value), [path]);

function told(document: unknown) {
  const model = modelFrom(document);
  return unusualDoubts(model, formatOf(model.setup));
}

it("an unusual value that readings made names them and asks for no typed number; a typed one asks what was meant", () => {
  // Far out, the lower ball joint leans the steering axis: nobody typed a pin angle.
  const readings = [
    { height: "wheelCenter", is: 13 },
    { offset: "lowerArm.ballJoint", is: 27 },
    { offset: "upperArm.ballJoint", is: 22.75 },
    { between: ["lowerArm.ballJoint", "upperArm.ballJoint"], is: 10 },
  ];
  const [made] = told(withReadings({ ...(begun as object), readings }));
  expect(made).toMatchObject({
    path: PIN_ANGLE,
    readings: [
      ["readings", 1, "is"],
      ["readings", 2, "is"],
      ["readings", 3, "is"],
    ],
  });
  expect(made!.text).toMatch(
    /It comes from “lower ball joint, out from the centerline”, “upper ball joint, out from the centerline” and “lower ball joint to upper ball joint”/i,
  );
  expect(made!.text).not.toContain("meant");

  const [own] = told(withReadings(typed({ ...(begun as object), readings: [] }, PIN_ANGLE, 21)));
  expect(own).toMatchObject({ path: PIN_ANGLE, readings: [] });
  expect(own!.text).toContain("Was 2.1° meant?");
});

it("what a variant tries is no reading, nor is what others tell of a field", () => {
  const readings = [{ size: "track", is: 66 }];
  const base = withReadings(typed({ ...(begun as object), readings }, ["wheel", "backspacing"], 4));
  const mine = { "knuckle.pinAngle": true, "knuckle.hubFace": true };
  const patch = { knuckle: { pinAngle: 9, hubFace: 6 }, fromExample: { mine } };
  const document = setAt(base, ["variants"], [{ name: "tried", patch }]);
  expect(readCount(modelFrom(document).setup)).toBe(2);
  expect(readCount(modelFrom(document, "tried").setup)).toBe(2);
});
