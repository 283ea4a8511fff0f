import { describe, expect, it } from "vitest";
import { fieldAt } from "../../src/setup/fieldCatalogue.ts";
import { setAt } from "../../src/setup/reading/setAt.ts";
import { readReadings } from "../../src/setup/readReadings.ts";
import { SHORT_LINES, WORKSHEET_LINES, WORKSHEET_PLACES } from "../../src/setup/worksheet/worksheetLines.ts";
import {
  type LineState,
  progressOf,
  readingsToAdd,
  worksheetOf,
} from "../../src/setup/worksheet/worksheetState.ts";
import { progressWords } from "../../src/studies/wording/worksheetNotes.ts";
import { ownTruckDocument } from "../../src/studies/worksheet/ownTruck.ts";

const begun = (isFull: boolean) => ownTruckDocument({ units: "in", steering: "rack", isFull });

/** The document with a number read at a line. */
function withRead(document: unknown, { path, ask }: LineState): unknown {
  const filled = setAt(document, path, ask && "size" in ask ? 66 : 9);
  return ask ? filled : setAt(filled, ["fromExample", "mine"], { ...mineOf(filled), [path.join(".")]: true });
}

function mineOf(document: unknown): object {
  return (document as { fromExample: { mine?: object } }).fromExample.mine ?? {};
}

describe("the worksheet", () => {
  it("is one list: twelve readings for a first verdict, thirty in all, each once, in the order of going round", () => {
    expect([SHORT_LINES.length, WORKSHEET_LINES.length]).toEqual([12, 30]);
    expect(new Set(WORKSHEET_LINES.map(({ key }) => key)).size).toBe(30);
    expect(new Set(WORKSHEET_LINES.map(({ asks }) => JSON.stringify(asks))).size).toBe(30);
    const places = WORKSHEET_LINES.map(({ place }) => WORKSHEET_PLACES.indexOf(place));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(WORKSHEET_LINES.filter(({ isMust, isShort }) => isMust && !isShort)).toEqual([]);
  });

  it("asks for fields that a setup has, and for readings that its block takes", () => {
    for (const { asks } of WORKSHEET_LINES)
      if ("field" in asks) expect(fieldAt(asks.field, begun(true)), String(asks.field)).not.toBeNull();
    const taken = readReadings(
      { ...begun(true), readings: readingsToAdd({}, true).map((ask) => ({ ...ask, is: 20 })) },
      "truck.json",
    );
    expect(taken.issues).toEqual([]);
    expect(taken.readings).toHaveLength(readingsToAdd({}, true).length);
  });

  it("begins with nothing read, and counts each line once however often it was read", () => {
    const short = worksheetOf(begun(false));
    expect(short.map(({ line }) => line?.key)).toEqual(SHORT_LINES.map(({ key }) => key));
    expect(progressOf(begun(false))).toMatchObject({ read: 0, needed: 12, missing: 12, listed: 12 });
    expect(progressOf(begun(true))).toMatchObject({ read: 0, missing: 12, listed: 30 });
    const twice = {
      ...begun(false),
      readings: [
        { height: "wheelCenter", is: 13 },
        { height: "wheelCenter", is: "13 1/8" },
      ],
    };
    const states = worksheetOf(twice);
    expect(states.filter(({ line }) => line?.key === "wheelCenterHeight").map(({ again }) => again)).toEqual([
      0, 1,
    ]);
    expect(progressOf(twice).read).toBe(1);
  });

  it("has enough with the last of the twelve, in any order, and not without what says where the tire is", () => {
    const lines = worksheetOf(begun(false));
    for (const order of [lines, [...lines].reverse()]) {
      let document: unknown = begun(false);
      order.forEach((state, i) => {
        expect(progressOf(document).missing).toBe(12 - i);
        document = withRead(document, state);
      });
      expect(progressOf(document)).toMatchObject({ read: 12, missing: 0 });
    }
    // Of the six, the hub face goes without saying where the track is read.
    const must = (state: LineState) => state.line?.isMust === true;
    const many = worksheetOf(begun(true)).filter((state) => !must(state));
    const without = many.reduce((document, state) => withRead(document, state), begun(true) as unknown);
    expect(progressOf(without)).toMatchObject({ read: many.length, missing: 5 });
    expect(progressWords(progressOf(without), true)).toBe(
      `${many.length} read; a first verdict still needs “tire size”, “fender lip over the axle, up from the floor”, “fender lip over the axle, out from the centerline”, “rim width” and “backspacing”`,
    );
  });

  it("takes calipers, the track and a stick with stations instead of what they tell as well", () => {
    const sizes = ["tire.diameter", "wheel.lipToLip", "wheel.backspacing", "track"];
    const stations = { stations: [[0, 0, 1]], stick: { offset: 36, height: 30 } };
    const readings = [
      ...sizes.map((size) => ({ size, is: 9 })),
      stations,
      ...readingsToAdd({}, true).slice(4),
    ];
    const read = readings.map((one) => ("stations" in one ? one : { ...one, is: 9 }));
    expect(progressOf({ ...begun(true), readings: read }).missing).toBe(0);
    expect(progressOf({ ...begun(true), readings: read.slice(1) }).missing).toBe(1);
  });

  it("shows readings that somebody added to the file after its own", () => {
    const document = {
      ...begun(false),
      readings: [{ ahead: "upperArm.rearPivot", is: -6 }, ...readingsToAdd({}, false)],
    };
    const states = worksheetOf(document);
    expect(states).toHaveLength(13);
    expect(states.at(-1)).toMatchObject({ line: null, ask: { ahead: "upperArm.rearPivot" }, isRead: true });
    expect(states.at(-1)!.path).toEqual(["readings", 0, "is"]);
  });
});
