import { expect, it } from "vitest";
import { withMine } from "../../../src/setup/exampleMarks.ts";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { readingRows } from "../../../src/studies/wording/readingRows.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const OWN: readonly (readonly [KeyPath, unknown])[] = [
  [["tire", "size"], "P235/70R15"],
  [["wheel", "backspacing"], "4 1/2 ± 1/32"],
  [["knuckle", "pinAngle"], 8.5],
];

it("everything that was read stands on paper in its own name with how well it is known, and nothing that was not", () => {
  const begun = OWN.reduce<unknown>(
    (all, [path, value]) => withMine(setAt(all, path, value), [path]),
    ownTruckDocument({ units: "in", steering: "rack", isFull: true }),
  );
  const readings = [
    { height: "wheelCenter", is: "13 1/4" },
    { height: "lowerArm.ballJoint", is: "8 1/2", within: "1/8" },
    { offset: "lowerArm.ballJoint" },
    { offset: "upperArm.ballJoint", is: "24 3/4", leftOut: true },
    { height: "upperArm.frontPivot", is: "17 3/4" },
    { angle: "lowerArm", is: 4 },
  ];
  const document = withReadings({ ...(begun as object), readings });
  const read = resolveSetup(document, "truck.json");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const rows = readingRows(read.value, document, { units: "in", fraction: 16 });
  expect(rows.map(({ name, value, within }) => [name, value, within])).toEqual([
    ["Tire size", "P235/70R15", ""],
    ["Wheel center, up from the floor", "13 1/4 in", "1/16 in"],
    ["Backspacing", "4 1/2 in", "1/32 in"],
    ["Pin angle", "8.5°", ""],
    ["Lower ball joint, up from the floor", "8 1/2 in", "1/8 in"],
    ["Upper ball joint, out from the centerline", "left out", ""],
    ["Upper arm, front pivot, up from the floor", "17 3/4 in", "1/16 in"],
    ["Lower arm, angle against level", "4.0°", "0.5°"],
  ]);
});
