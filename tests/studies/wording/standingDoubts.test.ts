import { describe, expect, it } from "vitest";
import { withMine } from "../../../src/setup/exampleMarks.ts";
import { newTruckDocument } from "../../../src/setup/newTruck.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { measureAskOf } from "../../../src/studies/measure/measureAskOf.ts";
import { measureTruck } from "../../../src/studies/measure/measureTruck.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { assumedTrimSentence, standingDoubts } from "../../../src/studies/wording/standingDoubts.ts";
import { applyReadings } from "../../../src/studies/worksheet/applyReadings.ts";
import { isTypedOver } from "../../../src/studies/worksheet/withReadings.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { LIP, TWELVE } from "../../reference/shortReadings.ts";
import { demoDocument, demoModel } from "../demoModel.ts";

const WHEEL = ["wheel", "backspacing"];

/** A truck of the short list, its lip read at a height. */
function truckRead(lip: string) {
  const told = (reading: (typeof TWELVE)[number]) =>
    reading.height === LIP ? lip : reading.offset === LIP ? "34 1/8" : reading.is;
  const readings = TWELVE.map((reading) => ({ ...reading, is: told(reading) }));
  const document = { ...newTruckDocument("in"), readings };
  const { ask } = measureAskOf(document, "truck.json");
  const applied = applyReadings(document, measureTruck(ask!), "in");
  const read = resolveSetup(applied, "truck.json");
  if (!read.ok) throw new Error(read.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  const made = modelOf(read.value, "truck.json");
  if (!made.ok) throw new Error(made.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  return { document: applied, model: made.value, format: formatOf(read.value) };
}

describe("a truck of readings that would touch where it stood", () => {
  it("is doubted, with what to read next; one that stands free is not", () => {
    const low = truckRead("26 1/2");
    const pose = solvePose(low.model.frontEnd, 0, 0);
    if (!pose.ok) throw new Error("it stands");
    expect(Math.min(...gapsAt(low.model, pose).map(({ gap }) => gap))).toBeLessThan(0);
    const [doubt, ...more] = standingDoubts(low.model, low.document, low.format);
    expect(more).toEqual([]);
    expect(doubt!.kind).toBe("assumed");
    expect(doubt!.text).toMatch(
      /^As measured, standing straight ahead, this truck would already touch the fender lip by [\d /]+ in\. Look: if it does not, a number is wrong\. Read these next: fender lip: points, 6 of 7; .*\.$/,
    );
    // A variant was never measured: it accuses no reading.
    const tried = { ...low.model, setup: { ...low.model.setup, variant: "another wheel" } };
    expect(standingDoubts(tried, low.document, low.format)).toEqual([]);
    // Neither was one whose wheel is another than was read: it is tried on. A number that no reading tells is the truck's own.
    const shown = (change: object) => withMine({ ...(low.document as object), ...change }, [WHEEL]);
    const wheel = { ...(low.document as { wheel: object }).wheel, backspacing: "3" };
    expect(isTypedOver(low.document)).toBe(false);
    expect(standingDoubts(low.model, shown({ wheel }), low.format)).toEqual([]);
    expect(standingDoubts(low.model, withMine(low.document, [["travel"]]), low.format)).toEqual([doubt]);
    const free = truckRead("32 1/4");
    expect(standingDoubts(free.model, free.document, free.format)).toEqual([]);
  });

  it("says at a trim of how many points nobody has read; a truck with nothing assumed says nothing", () => {
    const { model, document } = truckRead("30 1/4");
    expect(assumedTrimSentence("fender lip", model.setup, document)).toMatch(
      /^The fender lip is assumed at [1-9] of \d points: read it before you cut\.$/,
    );
    expect(assumedTrimSentence("no such part", model.setup, document)).toBeNull();
    const own = demoModel();
    expect(assumedTrimSentence("fender lip", own.setup, demoDocument())).toBeNull();
    expect(standingDoubts(own, demoDocument(), formatOf(own.setup))).toEqual([]);
  });
});
