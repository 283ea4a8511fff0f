import { describe, expect, it } from "vitest";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { readReadings } from "../../../src/setup/readReadings.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";
import { progressOf, worksheetOf } from "../../../src/setup/worksheet/worksheetState.ts";
import { readingEndWords } from "../../../src/studies/wording/worksheetWords.ts";
import {
  CALIPERED,
  marksOf,
  markTapes,
  plumbReadings,
  STRAIGHTEDGED,
  sizeReadings,
  stickReading,
} from "../../../src/studies/worksheet/gaugeReadings.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { photoReading } from "../../../src/studies/worksheet/photoReading.ts";
import { readingSketch } from "../../../src/studies/worksheet/readingSketch.ts";
import { scanFit } from "../../../src/studies/worksheet/scanFit.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";

const begun = ownTruckDocument({ units: "mm", steering: "rack", isFull: false });
const withList = (readings: readonly object[], document: object = begun) =>
  withReadings({ ...document, readings });

function setupOf(document: unknown) {
  const read = resolveSetup(document, "truck.json");
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

function lipOf(document: unknown) {
  const lip = setupOf(document).truck.body.find(({ name }) => name === "fender lip");
  if (lip?.kind !== "path") throw new Error("no lip");
  return lip.points;
}

describe("a fender lip along a level stick", () => {
  const empty = stickReading("mm");
  const [stations, stick] = [valueAt(empty, ["stations"]) as unknown[], { offset: 960, height: 460 }];

  it("is asked for before it is read, and holds nothing back", () => {
    const document = withList([empty]);
    expect(readReadings(document, "")).toMatchObject({ readings: [], issues: [], leftOut: [] });
    expect(setupOf(document).readings).toEqual([]);
    expect(worksheetOf(document).find(({ gauge }) => gauge === "stick")).toMatchObject({ isRead: false });
    // A station without a stick says nothing of the truck.
    const some = stations.map((one, i) => (i === 3 ? [0, 330, 40] : one));
    expect(setupOf(withList([{ ...empty, stations: some }])).readings).toEqual([]);
  });

  it("puts the lip where it was read, over each station, and needs no other reading of it", () => {
    const read = stations.map((one, i) => [(one as [string])[0], 330 - 40 * Math.abs(i - 3), 40 + i]);
    const document = withList([{ ...empty, stations: read, stick }]);
    const points = lipOf(document);
    expect(points).toHaveLength(7);
    points.forEach(([x, y, z], i) => {
      expect(x).toBeCloseTo(Number(read[i]![0]), 1);
      expect([y, z]).toEqual([
        expect.closeTo(960 - 40 - i, 1),
        expect.closeTo(460 + 330 - 40 * Math.abs(i - 3), 1),
      ]);
    });
    const musts = progressOf({ ...begun, readings: [{ ...empty, stations: read, stick }] });
    expect(musts.missing).toBe(progressOf(begun).needed - 1);
  });

  it("may be read in part: the other stations keep the shape of the arch", () => {
    const some = stations.map((one, i) => (i === 3 ? [0, 330, 40] : one));
    const points = lipOf(withList([{ ...empty, stations: some, stick }]));
    expect(points[3]![2]).toBeCloseTo(790, 1);
    const before = lipOf(withList([]));
    const up = points.map(([, , z], i) => z - before[i]![2]);
    for (const by of up) expect(by).toBeGreaterThan(0);
    expect(Math.max(...up) - Math.min(...up)).toBeLessThan(10);
  });
});

describe("plumb bob marks", () => {
  it("go from the next point, each with a letter of its own, and tapes from mark to mark", () => {
    const first = plumbReadings({ ...begun, readings: [] })!;
    expect(first).toEqual([{ plumb: "tieRodOuter", mark: "A" }, { ahead: "A" }, { offset: "A" }]);
    const document = { ...begun, readings: first };
    const second = plumbReadings(document)!;
    expect(second[0]).toEqual({ plumb: "steering.innerEnd", mark: "B" });
    expect(markTapes({ ...begun, readings: [...first, ...second] }, "B")).toEqual([{ between: ["B", "A"] }]);
    expect(markTapes({ readings: [...first, ...second, { between: ["A", "B"] }] }, "B")).toEqual([]);
  });

  it("put the point over where the mark was read", () => {
    const readings = [
      { plumb: "lowerArm.rearPivot", mark: "A" },
      { ahead: "A", is: -210 },
      { offset: "A", is: 255 },
    ];
    const [x, y] = setupOf(withList(readings)).truck.lowerArm.rearPivot;
    expect([x, y]).toEqual([expect.closeTo(-210, 1), expect.closeTo(255, 1)]);
  });

  it("are drawn on the floor under the point they were let down from", () => {
    const marks = marksOf({ readings: [{ plumb: "lowerArm.frontPivot", mark: "A" }] });
    const ask = { ahead: "A" };
    expect(readingSketch(ask, readingEndWords(ask), marks)).not.toBeNull();
    expect(readingSketch(ask, readingEndWords(ask))).toBeNull();
  });
});

describe("calipers and straightedge", () => {
  it("are asked for once each", () => {
    expect(sizeReadings({ readings: [{ size: "tire.diameter" }] }, CALIPERED)).toHaveLength(3);
    expect(sizeReadings({}, STRAIGHTEDGED)).toHaveLength(2);
  });

  it("give the wheel and the tire in place of the assumed ones, a size that was typed stays", () => {
    const readings = [
      { size: "wheel.lipToLip", is: 229 },
      { size: "wheel.backspacing", is: 120 },
      { size: "tire.diameter", is: 700 },
      { size: "tire.sectionWidth", is: 245 },
      { size: "tire.treadWidth", is: 190 },
      { size: "tire.shoulderDrop", is: 9 },
    ];
    const { wheel, tire } = setupOf(withList(readings));
    expect(wheel.rimWidth).toBeCloseTo(229 - 25.4, 1);
    // Backspacing is read from the inboard rim edge, half an inch outside the bead seat (common practice, no source).
    expect(wheel.offset).toBeCloseTo(120 - 229 / 2, 1);
    if (tire.kind !== "profile") throw new Error("calipers give a profile");
    expect(Math.max(...tire.profile.map(([, r]) => r))).toBeCloseTo(350, 0);
    const typed = setAt(setAt(begun, ["tire", "size"], "P215/60R15"), ["fromExample", "mine"], {
      "tire.size": true,
    }) as object;
    expect(valueAt(withList(readings, typed), ["tire", "size"])).toBe("P215/60R15");
  });

  it("a diameter alone makes a tire as wide as the assumed one, which is told as assumed", () => {
    const document = withList([{ size: "tire.diameter", is: 700 }]);
    expect(setupOf(document).fromExample?.fields.map(String)).toContain("tire,sectionWidth");
    expect(valueAt(document, ["tire", "diameter"])).toBe(700);
  });
});

describe("a fender arch traced in a side photo", () => {
  const offset = { offset: 'body["fender lip"].points[3]', is: 920 };
  const document = { ...begun, readings: [offset] };
  /** A picture taken square from the left: 2 px a millimeter, the front to its left. */
  const pixel = (x: number, z: number) => [2000 - 2 * x, 1800 - 2 * z] as const;
  const known = [
    { pixel: pixel(0, 340), ahead: "0", up: "340" },
    { pixel: pixel(400, 20), ahead: "400", up: "20" },
  ];
  const lip = (x: number) => 780 - 0.0018 * x * x;
  const traced = Array.from({ length: 101 }, (_, i) => pixel(500 - 10 * i, lip(500 - 10 * i)));

  it("is a reading at the stations, as high as the lip is and as far out as it was read", () => {
    const read = photoReading(document, "mm", known, traced);
    if (!read.ok) throw new Error(read.mend);
    expect(read).toMatchObject({ stations: 7, worst: null, mmPerPixel: expect.closeTo(0.5, 6) });
    const points = lipOf(withList([offset, read.reading]));
    for (const [x, y, z] of points) {
      expect(Math.abs(z - lip(x))).toBeLessThan(0.8);
      expect(y).toBeCloseTo(920, 0);
    }
  });

  it("is as far out as it was read along a stick, where no tape told", () => {
    const along = {
      stations: [
        ["0", "100", "30"],
        ["-300", "20", "45"],
      ],
      part: "fender lip",
      stick: { offset: "950", height: "600" },
    };
    const read = photoReading({ ...begun, readings: [along] }, "mm", known, traced);
    if (!read.ok) throw new Error(read.mend);
    const points = lipOf(withList([read.reading]));
    const outAt = (x: number) => points.find((one) => Math.abs(one[0] - x) < 1)![1];
    expect(outAt(0)).toBeCloseTo(920, 0);
    // Past its last station it is as far out as there.
    expect(Math.min(...points.map((one) => one[1]))).toBeCloseTo(905, 0);
  });

  it("says in a sentence what is missing or does not read, and how to mend it", () => {
    const mendOf = (...[of, at, line]: [unknown, Parameters<typeof photoReading>[2], typeof traced]) => {
      const read = photoReading(of, "mm", at, line);
      return read.ok ? "" : read.mend;
    };
    expect(mendOf(document, known.slice(0, 1), traced)).toContain("mark two points");
    expect(mendOf(document, [known[0]!, { ...known[1]!, up: "low" }], traced)).toMatch(
      /^known point 2, up from the floor: no number found/,
    );
    expect(mendOf(document, known, traced.slice(0, 1))).toContain("trace at least two points");
    expect(mendOf({ ...begun, readings: [] }, known, traced)).toContain("read how far out the lip is");
    expect(mendOf(document, known, [pixel(900, 500), pixel(700, 500)])).toContain(
      "passes none of the stations",
    );
  });
});

describe("a scan on matched points", () => {
  const from = [
    [0, 0, 0],
    [100, 0, 0],
    [0, 50, 0],
  ];
  const partOf = (to: readonly (readonly (number | string)[])[], unit?: string) => ({
    truck: { body: [{ kind: "mesh", file: "lip.stl", ...(unit ? { unit } : {}), place: { from, to } }] },
  });
  const part = ["truck", "body", 0];

  it("tells how far each comes out from its place, in the mesh's unit and the setup's", () => {
    // Turned a quarter about the vertical and moved: a fit without a residual.
    const turned = [
      [300, 800, 700],
      [300, 900, 700],
      [250, 800, 700],
    ];
    for (const off of scanFit(partOf(turned), part, "mm")!) expect(off).toBeCloseTo(0, 9);
    const [, longer] = scanFit(partOf(turned.with(1, [300, 906, 700])), part, "mm")!;
    expect(longer).toBeGreaterThan(2);
    expect(scanFit(partOf(turned, "cm"), part, "mm")![1]).toBeGreaterThan(100);
  });

  it("waits for all of them, not in line", () => {
    expect(scanFit(partOf([[0, 0, 0]]), part, "mm")).toBeNull();
    expect(
      scanFit(
        partOf([
          [0, 0, 0],
          [1, "", 0],
          [0, 1, 0],
        ]),
        part,
        "mm",
      ),
    ).toBeNull();
    expect(
      scanFit(
        partOf([
          [0, 0, 0],
          [1, 0, 0],
          [2, 0, 0],
        ]),
        part,
        "mm",
      ),
    ).toBeNull();
  });
});
