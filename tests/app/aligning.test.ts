import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { startShims, startTargets } from "../../src/app/choose/aligning/AligningPanel.tsx";
import { shimPieces } from "../../src/app/choose/aligning/ShimStack.tsx";
import { leftOverWords } from "../../src/app/choose/aligning/settingFormat.ts";
import { truckAlignment } from "../../src/app/choose/aligning/truckAlignment.ts";
import { namedTrucks } from "../../src/app/choose/compare/useVariantTrucks.ts";
import { standingText } from "../../src/app/parts/standing.tsx";
import { readRecord, recordOf } from "../../src/app/shell/storage/records.ts";
import { withHubFace } from "../../src/app/show/counter/whatIf.ts";
import { otherTruck } from "../../src/app/stage/otherTruck.ts";
import { shownPose } from "../../src/app/state/shown.ts";
import type { Truck } from "../../src/app/state/truck.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { modelAsked } from "../../src/studies/alignment/modelAsked.ts";
import { checkClearance } from "../../src/studies/reports/check.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";

const SEED = 1955;

const FILE = "half-ton-limits.json";
const DEGREE = Math.PI / 180;

/** The example with targets, quick to check: the fender lip alone, nothing that moves. */
function opened(change: (document: Record<string, unknown>) => void = () => {}) {
  const document = JSON.parse(readFileSync(`shared/${FILE}`, "utf8"));
  document.truck.body = document.truck.body.slice(0, 1);
  for (const key of ["hardware", "limits", "airSpring", "masses"]) delete document[key];
  document.variants = [{ name: "narrow", patch: { knuckle: { hubFace: "5 5/8" } } }];
  change(document);
  const store = createWorkbenchStore(JSON.stringify(document), FILE);
  if (store.getState().truck === null)
    throw new Error(JSON.stringify(store.getState().refusal ?? store.getState().issues));
  return store;
}

const truckIn = (store: ReturnType<typeof opened>): Truck => store.getState().truck!;
const read = (truck: Truck) => {
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  if (!pose.ok) throw new Error("the truck stands as measured");
  return pose;
};

describe("the truck shown aligned", () => {
  it("reads its targets but for what whole shims leave over, and as bolted on again when asked", () => {
    const store = opened();
    const bolted = truckIn(store);
    store.getState().setAligned(true);
    const aligned = truckIn(store);
    const targets = bolted.setup.alignment.targets!.left;
    const { left } = read(aligned);
    // A 1/32 in shim does about a tenth of a degree here; half of two steps is the most left over.
    expect(Math.abs(left.camber - targets.camber!)).toBeLessThan(0.2 * DEGREE);
    expect(Math.abs(left.caster - targets.caster!)).toBeLessThan(0.2 * DEGREE);
    expect(left.toe).toBeCloseTo(targets.toe, 9);
    expect(Math.abs(read(bolted).left.camber - targets.camber!)).toBeGreaterThan(0.2 * DEGREE);
    expect(shownPose(store.getState())).toMatchObject({ ok: true, left: { camber: left.camber } });
    expect(aligned.bolted).toBe(bolted.model);
    store.getState().setAligned(false);
    expect(truckIn(store)).toBe(bolted);
    store.getState().setAligned(true);
    expect(truckIn(store)).toBe(aligned);
  });

  it("is the same in a worker: what is asked makes the same gaps", () => {
    const store = opened();
    store.getState().setAligned(true);
    const { ask, model } = truckIn(store);
    const made = modelAsked(structuredClone(ask));
    if (!made.ok) throw new Error("it goes together");
    expect(made.value.frontEnd.left.row).toEqual(model.frontEnd.left.row);
    const answer = checkClearance(made.value).worst?.gap;
    expect(answer).toBe(checkClearance(model).worst?.gap);
    const bolted = modelAsked({ ...ask, isAligned: false });
    expect(bolted.ok && checkClearance(bolted.value).worst?.gap).not.toBe(answer);
  });

  it("has every variant beside it aligned too, and the truck with another hub face", () => {
    const store = opened();
    store.getState().setAligned(true);
    const { document, file, meshes } = store.getState();
    const columns = namedTrucks(document!, file, meshes, '["narrow"]', true);
    expect(columns.map(({ truck }) => truck?.ask.isAligned)).toEqual([true, true]);
    expect(otherTruck(store.getState(), "narrow")?.ask.isAligned).toBe(true);
    const wider = withHubFace(truckIn(store), 150);
    expect(wider.ok && wider.value.ask.isAligned).toBe(true);
    expect(wider.ok && wider.value.setup.knuckle.hubFace).toBe(150);
  });

  it("follows an edit of its targets", () => {
    const store = opened();
    store.getState().setAligned(true);
    const before = read(truckIn(store)).left.camber;
    store.getState().editField(["alignment", "targets", "camber"], "-1.5");
    expect(read(truckIn(store)).left.camber).toBeLessThan(before - 0.5 * DEGREE);
  });

  it("draws each side's own arms where the two are set differently", () => {
    const store = opened((document) => {
      document.alignment = { targets: { camber: -0.5, left: { caster: 4.2 }, right: { caster: 3.4 } } };
    });
    store.getState().setAligned(true);
    const { setup, model } = truckIn(store);
    const right = setup.alignment.standing?.rightArms;
    expect(right?.upperArm.frontPivot).not.toEqual(setup.truck.upperArm.frontPivot);
    expect(model.mirrored).toBe(false);
  });

  it("stays as bolted on without targets, and says so", () => {
    const store = opened((document) => {
      delete document.alignment;
    });
    const bolted = truckIn(store);
    expect(standingText(bolted, false)).toBeNull();
    store.getState().setAligned(true);
    expect(truckIn(store)).toBe(bolted);
    expect(standingText(bolted, true)).toBe("as bolted on: no targets");
  });

  it("says which of the two it is, and when it is only the nearest there is", () => {
    const store = opened();
    expect(standingText(truckIn(store), false)).toBe("as bolted on");
    store.getState().setAligned(true);
    expect(standingText(truckIn(store), true)).toBe("aligned");
    store.getState().editField(["alignment", "targets", "camber"], "-6");
    expect(standingText(truckIn(store), true)).toBe("aligned as near as its adjusters go");
  });

  it("is kept with the setup in the browser; a record from before is as bolted on", () => {
    const store = opened();
    store.getState().setAligned(true);
    const record = recordOf(store.getState(), true)!;
    expect(readRecord(structuredClone(record))?.isAligned).toBe(true);
    const { isAligned: _, ...older } = record;
    expect(readRecord(older)?.isAligned).toBe(false);
  });
});

describe("the alignment card", () => {
  it("is of the truck as bolted on, whichever is shown", () => {
    const store = opened();
    const before = truckAlignment(truckIn(store));
    store.getState().setAligned(true);
    expect(truckAlignment(truckIn(store))).toBe(before);
  });

  it(`makes each stack of whole shims, thickest first (seed ${SEED})`, () => {
    expect(shimPieces(10, 2)).toEqual([8, 2]);
    expect(shimPieces(0, 2)).toEqual([]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.constantFrom(0.79375, 0.5, 1), (count, step) => {
        const pieces = shimPieces(count * step, step);
        expect(pieces.reduce((sum, piece) => sum + piece, 0)).toBeCloseTo(count * step, 9);
        expect([...pieces].sort((a, b) => b - a)).toEqual(pieces);
        for (const piece of pieces) expect([1, 2, 4]).toContain(Math.round(piece / step));
      }),
      { seed: SEED },
    );
  });

  it("tells what is left over, and whether that is in range", () => {
    expect(leftOverWords(0.03 * DEGREE, true)).toEqual({ amount: "+0.03°", words: "in range", isGood: true });
    expect(leftOverWords(-1.2 * DEGREE, false)).toEqual({
      amount: "−1.20°",
      words: "out of range",
      isGood: false,
    });
    expect(leftOverWords(-1e-5, false)).toEqual({ amount: "0.00°", words: "met", isGood: true });
    expect(leftOverWords(null, true).words).toBe("not asked for");
  });

  it("starts a setup without targets with what it reads, and with shims that go together", () => {
    const store = opened((document) => {
      delete document.alignment;
      delete document.adjusters;
    });
    const result = truckAlignment(truckIn(store));
    if (!result.ok) throw new Error("it stands as measured");
    const { applySuggestion } = store.getState();
    applySuggestion({ path: ["adjusters"], value: startShims("in"), kind: "nearest" });
    const targets = startTargets(result.alignment, truckIn(store).setup);
    applySuggestion({ path: ["alignment", "targets"], value: targets, kind: "nearest" });
    expect(store.getState().issues).toEqual([]);
    const solved = truckAlignment(truckIn(store));
    expect(solved.ok && [solved.alignment.asked, solved.alignment.reached]).toEqual([true, true]);
  });
});
