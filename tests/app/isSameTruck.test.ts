import { expect, it } from "vitest";
import { withHubFace } from "../../src/app/show/counter/whatIf.ts";
import { isMovedAlike, isSameTruck, isTypedAlike } from "../../src/app/state/sameTruck.ts";
import { type Truck, truckOf } from "../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { asExample } from "../../src/setup/exampleMarks.ts";
import { answerHeadline } from "../../src/studies/wording/answerWords.ts";
import { exampleDocument, exampleText } from "./exampleText.ts";

function truck(variant: string | null): Truck {
  const made = truckOf(exampleText, "test.json", variant);
  if (!made.ok) throw new Error(made.issues.map(({ mend }) => mend).join("; "));
  return made.value;
}

it("two letters are one truck where every number is the same, whatever the variants are called", () => {
  const [current, narrow] = [truck(null), truck("narrow")];
  expect(isSameTruck(current, truck(null))).toBe(true);
  expect(isSameTruck(current, narrow)).toBe(false);
  const tried = withHubFace(narrow, current.setup.knuckle.hubFace);
  expect(tried.ok && isSameTruck(current, tried.value)).toBe(true);
});

it("a pose that was given a name makes no other truck: what was found of it stands", () => {
  const store = createWorkbenchStore(JSON.stringify(asExample(exampleDocument, "Test truck")), "test.json");
  const before = store.getState();
  before.insertItem(["poses"], 0, { name: "on a curb", leftTravel: 1.5, rightTravel: 0 });
  const after = store.getState();
  expect(after.truck!.setup.poses).toHaveLength(1);
  expect(isSameTruck(before.truck!, after.truck!)).toBe(true);
  expect(isMovedAlike(before.truck!.setup, after.truck!.setup)).toBe(true);
  expect(isTypedAlike(before.document, after.document)).toBe(true);
  expect(after.truck!.motion).toBe(before.truck!.motion);
  // Nor is an example anybody's own by it.
  expect(after.truck!.setup.fromExample).toEqual(before.truck!.setup.fromExample);
  expect(answerHeadline("fromExample", after.truck!.setup)).toBe("The example clears");
});

it("a scan is the same where each of its numbers is", () => {
  const current = truck(null);
  const withScan = (last: number) => {
    const positions = Float64Array.of(0, 0, 0, 9, 0, 0, 0, 9, last);
    const scan = {
      name: "scan",
      side: "both",
      kind: "mesh",
      positions,
      triangles: Uint32Array.of(0, 1, 2),
    } as const;
    return { setup: { ...current.setup, truck: { ...current.setup.truck, body: [scan] } } };
  };
  expect(isSameTruck(withScan(3), withScan(3))).toBe(true);
  expect(isSameTruck(withScan(3), withScan(4))).toBe(false);
});
