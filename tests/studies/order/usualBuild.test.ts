import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readMaterials } from "../../../src/setup/catalogs/readMaterials.ts";
import { effectiveDocument } from "../../../src/setup/editing/effectiveDocument.ts";
import { asExample, exampleFields, withExampleAt, withMine } from "../../../src/setup/exampleMarks.ts";
import { readSetup } from "../../../src/setup/readSetup.ts";
import type { BuildSetup } from "../../../src/setup/types/buildTypes.ts";
import { keyText } from "../../../src/setup/types/keyPath.ts";
import type { Setup } from "../../../src/setup/types/types.ts";
import { shopDrawings } from "../../../src/studies/drawings/shopDrawings.ts";
import { carriersOf } from "../../../src/studies/loads/carriers.ts";
import { loadsReport } from "../../../src/studies/loads/loadsReport.ts";
import { strengthOf } from "../../../src/studies/loads/strengthOf.ts";
import { modelOf } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { USUAL_KNUCKLE, usualBuild } from "../../../src/studies/order/usualBuild.ts";
import { BUILD_NUMBERS, exampleDoubts } from "../../../src/studies/wording/answerWords.ts";
import { usualBuildSentence } from "../../../src/studies/wording/drawingWords.ts";
import { runs } from "../../runs.ts";
import { sheetOf } from "./orderedTruck.ts";

const SHARED = new URL("../../../shared/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, SHARED), "utf8");
const trucks = ["", "worked/"].flatMap((folder) =>
  readdirSync(new URL(`./${folder}`, SHARED))
    .filter((file) => file.endsWith(".json") && file !== "tire-sizes.json")
    .map((file) => `${folder}${file}`),
);
/** What files of each truck's knuckle begin with. */
const FILES: Readonly<Record<string, string>> = {
  "compact-front-steer.json": "orchard-row-compact-front-steer-short-arms",
  "flatbed-long-arms.json": "canal-street-flatbed-front-steer-long-arms",
  "half-ton-limits.json": "fern-street-shop-half-ton-aligned-and-on-bags",
  "half-ton-on-air.json": "fern-street-shop-half-ton-on-air",
  "long-bed-steering-box.json": "mill-lane-long-bed-with-a-steering-box",
  "ordered-knuckle.json": "TS-014-tamarack-street-short-bed",
  "scanned-fender.json": "fern-street-shop-half-ton-front-arch-scanned",
  "tape-measured.json": "quarry-lane-half-ton-measured-with-a-tape",
  "tubular-knuckle.json": "half-ton-on-a-tubular-knuckle",
  "worked/barrel-meets-rod-end.json": "larkin-court-compact-wheels",
  "worked/bent-fender.json": "alder-street-half-ton-left-fender-bent-and-scanned",
  "worked/between-the-locks.json": "dogwood-lane-short-bed-flare-bolts-left-long",
  "worked/droop-binds-rod-end.json": "cooper-street-half-ton-let-down-too-far",
  "worked/narrow-meets-frame.json": "juniper-road-half-ton-on-a-wide-frame",
  "worked/thin-margin.json": "sorrel-avenue-half-ton-measured-in-a-hurry",
};
const ORDERED = JSON.parse(textOf("ordered-knuckle.json"));
const MATERIALS = readMaterials(JSON.parse(textOf("catalogs/materials.json")), "materials.json");

function read(document: object): Setup {
  const found = readSetup(JSON.stringify(document), "truck.json");
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value.setup;
}

/** A truck that says nothing of what its knuckle is made of, nor variants of it; scans are files of their own. */
function unbuilt(name: string): Record<string, unknown> {
  const { build: _, variants: __, truck, ...document } = JSON.parse(textOf(name));
  const body = truck.body?.filter((part: object) => !("file" in part));
  return { ...document, truck: { ...truck, body } };
}

/** What carries the ordered example, each length with its unit, for trucks that have none of their own. */
const CARRIED = {
  masses: { corner: "1010 lb", unsprung: "95 lb" },
  loads: { spring: inInches(ORDERED.loads.spring) },
};

function inInches(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((one) => `${one} in`);
  return Object.fromEntries(
    Object.entries(value as object).map(([key, one]) => [key, key === "on" ? one : inInches(one)]),
  );
}

/** The document with a usual knuckle laid on it. */
function laidOn(document: Record<string, unknown>): object {
  const setup = read(document);
  const ordered = setup.order ? sheetOf(document) : null;
  const built = { ...document, build: usualBuild(setup.knuckle, setup.units, ordered) };
  return withExampleAt(built, ["build"], USUAL_KNUCKLE) as object;
}

const places = ({ joints, pin, plates }: BuildSetup) =>
  [
    joints.map(({ at }) => at),
    pin!.steps.map(({ from, to, diameter, fillet }) => [from, to, diameter, fillet]),
    [pin!.bearings!.inner, pin!.bearings!.outer],
    plates.map(({ at, across, up, outline, holes }) => [at, across, up, outline, holes.map((one) => one.at)]),
  ].flat(9) as number[];

const NUMBERS = [
  ["  1042 / B ", "1042-B-drawing.pdf"],
  ["../x", "x-drawing.pdf"],
  ["№ 7", "No-7-drawing.pdf"],
  ["Zakázka č. 14", "Zakazka-c-14-drawing.pdf"],
  ["Заказ-14й", "Заказ-14й-drawing.pdf"],
  ["///", "tamarack-street-short-bed-knuckle-on-order-drawing.pdf"],
] as const;
it.each(NUMBERS.filter((_, i) => i % runs(2, 1) === 0))(
  "the order's number %j begins the names of its files, in letters that a name can hold",
  (number, name) => {
    const setup = read({ ...ORDERED, order: { ...ORDERED.order, number, customer: undefined } });
    const drawn = shopDrawings(setup, { paper: "letter", kerf: 0, angle: "third" }, "t");
    expect(drawn.ok && drawn.value.files[0]!.file).toBe(name);
  },
);

describe("a usual knuckle", () => {
  it("is named after the example, and laid on the example's own points it is the example's build", () => {
    expect(USUAL_KNUCKLE).toBe(ORDERED.name);
    const own = read(ORDERED).build!;
    const laid = read(laidOn(unbuilt("ordered-knuckle.json"))).build!;
    expect(laid.members).toEqual(own.members);
    expect(laid.welds).toEqual(own.welds);
    expect(laid.studs).toEqual(own.studs);
    expect(laid.rodEnds).toEqual(own.rodEnds);
    const [found, wanted] = [places(laid), places(own)];
    expect(found).toHaveLength(wanted.length);
    // The example's places are typed to a thousandth of an inch.
    found.forEach((one, i) => {
      expect(Math.abs(one - wanted[i]!)).toBeLessThan(0.03);
    });
  });

  // On every change every other one.
  it.each(trucks.filter((_, i) => i % runs(2, 1) === 0))(
    "goes on %s: no issues, drawings, a cut list and shares of yield of every kind",
    (name) => {
      const document = unbuilt(name);
      const setup = read(laidOn({ ...CARRIED, ...document }));
      const drawn = shopDrawings(setup, { paper: "letter", kerf: 0, angle: "third" }, "t");
      if (!drawn.ok) throw new Error(JSON.stringify(drawn.issues));
      expect(drawn.value.cutList.pieces.map((one) => one.name)).toEqual([
        ...["lower post", "upper post", "lower boss", "upper boss"],
      ]);
      const prefix = `${FILES[name]}-`;
      expect(drawn.value.files.map(({ file }) => file)).toEqual(
        expect.arrayContaining(
          ["drawing.pdf", "cut-list.pdf", "plate-steering-arm-plate.dxf"].map((file) => `${prefix}${file}`),
        ),
      );
      expect(drawn.value.files.filter(({ file }) => !file.startsWith(prefix))).toEqual([]);
      if (!MATERIALS.ok) throw new Error("materials");
      const strength = strengthOf(setup, MATERIALS.value)!;
      expect(strength.noFrame).toBeNull();
      const carriers = carriersOf(setup, "t");
      const model = modelOf(setup, "t");
      if (!model.ok) throw new Error(JSON.stringify(model.issues));
      if (!carriers.ok) throw new Error(carriers.issue.mend);
      const report = loadsReport(
        model.value,
        carriers.value,
        strength,
        { name: null, pose: { travel: 0, steer: 0 } },
        Budget.endless(),
      );
      expect(report.governs!.shareOfYield).toBeGreaterThan(0.01);
      const kinds = new Set(report.cases.flatMap((one) => one.strength!.stresses.map(({ kind }) => kind)));
      expect([...kinds]).toEqual(expect.arrayContaining(["pin", "weld", "member"]));
    },
  );

  it("is in the truck's own units, its steering arm on the arm's own side", () => {
    const document = unbuilt("compact-front-steer.json");
    expect(usualBuild(read(document).knuckle, "mm", null)).toMatchObject({
      pin: { steps: [{ diameter: 44.45 }, {}, {}] },
      plates: [{ across: [126, -2, 0] }, { across: [-1, 0, 0] }],
    });
  });

  it("is named in no word where the build is an example's own", () => {
    const document = JSON.parse(textOf("tubular-knuckle.json"));
    const own = read(withMine(asExample(document, document.name), [["knuckle", "hubFace"]]) as object);
    expect(exampleDoubts(own)[0]?.text).toMatch(
      /not measured on this truck\. 65 of them are sizes of what the knuckle is built of: no gap moves with them\.$/,
    );
    expect(BUILD_NUMBERS).not.toMatch(/usual/);
  });

  it("is told as the example's, number by number, and takes no verdict's green", () => {
    const own = unbuilt("half-ton-on-air.json");
    const setup = read(laidOn(own));
    const { fields } = setup.fromExample!;
    expect(fields.length).toBeGreaterThan(40);
    expect(fields.every(([block]) => block === "build")).toBe(true);
    expect(exampleDoubts(setup)).toEqual([]);
    // Beside numbers that do move a gap, the count says why it grew.
    const more = { ...setup.fromExample!, fields: [["knuckle", "span"], ...fields], isAsItCame: false };
    expect(exampleDoubts({ ...setup, fromExample: more })[0]?.text).toMatch(
      new RegExp(
        `^${fields.length + 1} numbers are still .* ${fields.length} of them are sizes of what the knuckle is built of: no gap moves with them\\.$`,
      ),
    );
    expect(usualBuildSentence(setup)).toMatch(
      new RegExp(`^⋯ ${fields.length} numbers .*from the example.*licensed engineer`),
    );
    expect(usualBuildSentence(read(own))).toBeNull();
    const pagesOf = (one: Setup) => {
      const drawn = shopDrawings(one, { paper: "letter", kerf: 0, angle: "third" }, "t");
      if (!drawn.ok) throw new Error(JSON.stringify(drawn.issues));
      return drawn.value.pages.map(({ texts }) => texts.map(({ text }) => text).join(" "));
    };
    const says = (page: string) => page.includes(`${fields.length} numbers of this knuckle's build are from`);
    // All but the jig sheets, which nothing is cut by.
    expect(
      pagesOf(setup)
        .filter((page) => page.includes("Steering part:"))
        .every(says),
    ).toBe(true);
    expect(pagesOf(setup).filter(says).length).toBeGreaterThan(2);
    expect(pagesOf({ ...setup, fromExample: null }).filter(says)).toEqual([]);
    // What a variant is made of by its own words is no example's.
    const pin = { steps: ORDERED.build.pin.steps };
    const varied = laidOn({ ...own, variants: [{ name: "own pin", patch: { build: { pin } } }] });
    const left = exampleFields(effectiveDocument(varied, "own pin")).map(keyText);
    expect(left.length).toBeGreaterThan(20);
    expect(left.filter((key) => key.startsWith("build.pin.steps"))).toEqual([]);
    // Of a truck that began as an example everything else stays as it was said.
    const marked = laidOn({
      ...own,
      fromExample: { of: "x", mine: { "knuckle.hubFace": true, build: true } },
    });
    expect(read(marked).fromExample!.fields.map(([block]) => block)).toContain("truck");
    expect((marked as { fromExample: unknown }).fromExample).toEqual({
      of: "x",
      mine: { "knuckle.hubFace": true, build: false },
    });
  });
});
