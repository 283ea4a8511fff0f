import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { limitToAdd } from "../../src/app/clear/limits/addLimit.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { limitMargins } from "../../src/studies/limits/limitsOf.ts";
import { notChecked } from "../../src/studies/limits/limitsOn.ts";
import { limitsOverRange } from "../../src/studies/limits/limitsPassed.ts";
import { limitPlace, limitRows } from "../../src/studies/wording/limitRows.ts";
import { leastText, marginText, placeText } from "../../src/studies/wording/limitTexts.ts";
import { borderText } from "../../src/studies/wording/stopTexts.ts";

const FILE = "half-ton-limits.json";
const INCHES = { units: "in" } as const;

/** The example with these limits alone. */
function opened(limits: unknown) {
  const document = JSON.parse(readFileSync(`shared/${FILE}`, "utf8"));
  document.truck.body = document.truck.body.slice(0, 1);
  for (const key of ["hardware", "airSpring", "masses", "roll", "floor"]) delete document[key];
  document.stances = document.stances.filter((one: { travel?: unknown }) => one.travel !== undefined);
  document.variants = [];
  if (limits === null) delete document.limits;
  else document.limits = limits;
  const store = createWorkbenchStore(JSON.stringify(document), FILE);
  if (store.getState().truck === null) throw new Error(JSON.stringify(store.getState().issues));
  return store;
}

describe("rows of limits", () => {
  it("one a limit, by the share in hand at the pose, its worse side told where both differ", () => {
    const { model } = opened({ lowerBallJoint: { cone: 20 }, steeringStop: { angle: 37 } }).getState().truck!;
    const straight = limitRows(limitMargins(model, 0, 0), null);
    expect(straight.map(({ name }) => name).sort()).toEqual(["lower ball joint", "steering stop"]);
    expect(straight.every(({ isAlike }) => isAlike)).toBe(true);
    const turned = limitRows(limitMargins(model, 0, 0.6), null);
    const stop = turned.find(({ name }) => name === "steering stop")!;
    expect(stop.isAlike).toBe(false);
    // In a left turn the left wheel, the inner one, turns more.
    expect(stop.now?.side).toBe("left");
    const shares = turned.map(({ now }) => now!.share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  it("a limit passed says so, and where first; one that is kept, where it is least", () => {
    const { model, setup } = opened({ bumpStop: { travel: 2 }, droopStrap: { travel: "-3 3/4" } }).getState()
      .truck!;
    const overall = limitsOverRange(model);
    const rows = limitRows(limitMargins(model, 3 * 25.4, 0), overall);
    const stop = rows.find(({ name }) => name === "bump stop")!;
    expect(stop.isPassed).toBe(true);
    expect(marginText(stop.now!, INCHES)).toBe("passed by 1 in");
    const place = limitPlace(stop.overall!, INCHES);
    expect(place.travel).toBeCloseTo(2 * 25.4, 3);
    expect(placeText(place, setup, INCHES)).toBe("passed from 2 in bump, straight ahead on");
    const strap = rows.find(({ name }) => name === "droop strap")!;
    expect(strap.isPassed).toBe(false);
    expect(placeText(limitPlace(strap.overall!, INCHES), setup, INCHES)).toMatch(/^least at full droop/);
    const [least] = limitMargins(model, -3.75 * 25.4, 0).ok
      ? limitRows(limitMargins(model, -3.75 * 25.4, 0), null)
      : [];
    expect(marginText(least!.now!, INCHES)).toBe("just met");
  });

  it("the least in hand leaves the side out where both are alike", () => {
    const margin = { measure: "angle", share: 0.1 } as const;
    const left = { ...margin, side: "left", name: "lower ball joint", margin: 0.05 } as const;
    const right = { ...left, side: "right" } as const;
    expect(leastText([left, right], INCHES)).toBe("lower ball joint, in hand 2.8°");
    expect(leastText([left, { ...right, margin: 0.2 }], INCHES)).toBe("left lower ball joint, in hand 2.8°");
  });

  it("a border is told by what sets it", () => {
    const at = 2 * 25.4;
    expect(borderText({ stop: "limit", at, side: "left", name: "bump stop" }, "travel", 0, INCHES)).toBe(
      "bump stop (left) at 2 in bump",
    );
    expect(borderText({ stop: "end", at: -1 }, "steer", 0, INCHES)).toBe("nothing up to full right lock");
  });
});

describe("adding a limit that is not checked", () => {
  it("each number offered is taken by the setup, and the limit is then checked", () => {
    const store = opened(null);
    const before = notChecked(store.getState().truck!.setup);
    const offered = before.flatMap((name) => {
      const toAdd = limitToAdd(name, store.getState().truck!.setup);
      return toAdd === null ? [] : [{ name, toAdd }];
    });
    expect(offered.map(({ name }) => name)).toEqual([
      ...["upper ball joint", "lower ball joint", "outer tie rod end", "inner tie rod end"],
      ...["bump stop", "droop strap", "steering stop", "rack stroke"],
    ]);
    for (const { name, toAdd } of offered) {
      store.getState().editField(toAdd.path, toAdd.value);
      expect(store.getState().issues).toEqual([]);
      expect(notChecked(store.getState().truck!.setup)).not.toContain(name);
    }
    expect(notChecked(store.getState().truck!.setup)).toEqual([
      ...["shock length", "air spring compression", "air spring extension"],
    ]);
  });
});
