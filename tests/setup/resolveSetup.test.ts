import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SetupDocument } from "../../src/setup/document.ts";
import { formatIssue } from "../../src/setup/reading/issueList.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import type { Setup } from "../../src/setup/types/types.ts";
import { runs } from "../runs.ts";
import { barestDocument, exampleDocument, pitmanSteering } from "./fixtures.ts";

function resolved(document: unknown, variant: string | null = null): Setup {
  const setup = resolveSetup(document, "truck.json", variant);
  if (!setup.ok) throw new Error(setup.issues.map(formatIssue).join("\n"));
  return setup.value;
}

const IN = 25.4;
const DEG = Math.PI / 180;

describe("resolveSetup", () => {
  it("turns every field into millimeters and radians", () => {
    const setup = resolved(exampleDocument());
    expect(setup).toMatchObject({ name: "Invented half-ton", units: "in", variant: null });
    expect(setup.variantNames).toEqual(["narrow", "wide wheel"]);
    expect(setup.truck.wheelbase).toBeCloseTo(118 * IN, 9);
    expect(setup.truck.upperArm.rearPivot[1]).toBeCloseTo(15.5 * IN, 9);
    expect(setup.truck.upperArm.ballJoint[2]).toBeCloseTo(19.375 * IN, 9);
    expect(setup.truck.lowerArm.ballJoint).toEqual(
      [0.25 * IN, 666.75, 209.55].map((v) => expect.closeTo(v, 9)),
    );
    expect(setup.truck.steering).toMatchObject({ type: "rack", stroke: expect.closeTo(2.875 * IN, 9) });
    expect(setup.knuckle).toEqual({
      span: expect.closeTo(10.75 * IN, 9),
      pinHeight: expect.closeTo(5.25 * IN, 9),
      pinLead: expect.closeTo(IN / 16, 9),
      pinAngle: expect.closeTo(8.25 * DEG, 14),
      hubFace: expect.closeTo(5.875 * IN, 9),
      steeringArm: [-6.125, -0.75, 1.5].map((v) => expect.closeTo(v * IN, 9)),
    });
    expect(setup.tire).toEqual({ kind: "size", size: "P225/70R15", loadedRadius: 335 });
    expect(setup.alignment.toe).toBeCloseTo(0.125 * DEG, 14);
    expect(setup.travel).toEqual({ droop: expect.closeTo(-88.9, 9), bump: expect.closeTo(82.55, 9) });
    expect(setup.stances).toEqual([
      { name: "parked", travel: expect.closeTo(76.2, 9) },
      { name: "on the road", travel: 0 },
    ]);
    expect(setup.allowance).toBeCloseTo(9.525, 9);
  });

  it("keeps body parts in order, with their sides", () => {
    const { body } = resolved(exampleDocument()).truck;
    expect(body.map(({ name, kind, side }) => [name, kind, side])).toEqual([
      ["fender lip", "path", "both"],
      ["frame rail", "box", "left"],
      ["inner fender", "mesh", "right"],
    ]);
    expect(body[0]).toMatchObject({ radius: expect.closeTo(3.175, 9), points: { length: 3 } });
    expect(body[1]).toMatchObject({ min: [expect.closeTo(-812.8, 9), 317.5, expect.closeTo(406.4, 9)] });
    const mesh = body[2]!;
    if (mesh.kind !== "mesh") throw new Error("the third part is the mesh");
    expect([...mesh.triangles]).toEqual([0, 1, 2]);
    expect([...mesh.positions.slice(6)]).toEqual([0, 508, expect.closeTo(850.9, 9)]);
  });

  it("fills in every value that may be left out", () => {
    const setup = resolved(barestDocument());
    expect(setup).toMatchObject({
      name: "Untitled setup",
      variantNames: [],
      stances: [],
      alignment: { toe: 0 },
    });
    expect(setup.truck).toMatchObject({ wheelbase: null, body: [] });
    expect(setup.knuckle.pinLead).toBe(0);
    expect(setup.wheel.barrelDiameter).toBeCloseTo(13.75 * IN, 9);
    expect(setup.tire).toEqual({
      kind: "dimensions",
      diameter: expect.closeTo(711.2, 9),
      sectionWidth: expect.closeTo(228.6, 9),
      treadWidth: null,
      loadedRadius: null,
    });
    expect(setup.allowance).toBeCloseTo(6.35, 9);
  });

  it("makes offset from backspacing with half an inch of flange each side, whatever the file's units", () => {
    // 7 in rim is 8 in over all, so 3 3/4 in of backspacing is 1/4 in inboard of the middle.
    expect(resolved(exampleDocument()).wheel.offset).toBeCloseTo(-0.25 * IN, 9);
    const inMm = {
      ...barestDocument(),
      wheel: { rimDiameter: "15 in", rimWidth: 177.8, backspacing: 95.25 },
      units: "mm",
    };
    inMm.tire = { diameter: 711, sectionWidth: 229 };
    expect(resolved({ ...inMm, ...inMillimeters() }).wheel.offset).toBeCloseTo(-0.25 * IN, 9);
  });

  it("gives the same setup for the same truck typed in the other unit", () => {
    const inches = resolved(barestDocument());
    const mm = resolved({ ...barestDocument(), ...inMillimeters() });
    expect(mm.truck.lowerArm.ballJoint).toEqual(
      inches.truck.lowerArm.ballJoint.map((v) => expect.closeTo(v, 9)),
    );
    expect(mm.knuckle.span).toBeCloseTo(inches.knuckle.span, 9);
  });

  it("gives pitman and idler shafts a direction of length 1, upright when none is typed, and mirrors the inner end", () => {
    const document = { ...exampleDocument() };
    const steering = resolved({ ...document, truck: { ...document.truck, steering: pitmanSteering() } }).truck
      .steering;
    if (steering.type !== "pitman") throw new Error(steering.type);
    expect(steering.pitman.axis).toEqual([0, 0, 1]);
    expect(Math.hypot(...steering.idler.axis)).toBeCloseTo(1, 14);
    expect(steering.idler.axis[1] / steering.idler.axis[2]).toBeCloseTo(0.1, 14);
    expect(steering.swing).toBeCloseTo(36 * DEG, 14);
    expect(steering.innerEndRight).toEqual([
      steering.innerEnd[0],
      -steering.innerEnd[1],
      steering.innerEnd[2],
    ]);
  });

  it("takes a right inner end that is typed", () => {
    const document = exampleDocument();
    const typed = { ...pitmanSteering(), innerEndRight: [-5, "-9 1/8", 10.5] };
    const { steering } = resolved({ ...document, truck: { ...document.truck, steering: typed } }).truck;
    expect(steering).toMatchObject({ innerEndRight: { 1: expect.closeTo(-9.125 * IN, 9) } });
  });

  it("takes a path of one point as a ball and drops points that repeat the one before", () => {
    const document = exampleDocument();
    document.truck.body = [
      { name: "ball", kind: "path", radius: 0, points: [[1, 2, 3]] },
      {
        name: "lip",
        kind: "path",
        radius: 1,
        points: [
          [0, 30, 20],
          [0, 30, "20 in"],
          [0, 30, 25],
          [0, 30, 20],
        ],
      },
    ];
    const [ball, lip] = resolved(document).truck.body;
    expect(ball).toMatchObject({ radius: 0, points: { length: 1 } });
    expect(lip).toMatchObject({ points: { length: 3 } });
  });

  it("takes a measured profile and drops a point that repeats the one before", () => {
    const profile = [
      [-4, 7.5],
      [-4.75, 10],
      [-4.75, 10],
      [-3.5, 13.75],
      [3.5, 13.75],
      [4.75, 10],
      [4, 7.5],
    ];
    const { tire } = resolved({ ...exampleDocument(), tire: { profile } });
    if (tire.kind !== "profile") throw new Error(tire.kind);
    expect(tire.profile).toHaveLength(6);
    expect(tire.profile[1]).toEqual([expect.closeTo(-120.65, 9), 254]);
  });

  it("takes a profile that starts and ends on the barrel, and one that is not convex", () => {
    const onBarrel = [
      [-4, 6.75],
      [-4.5, 10],
      [0, 14],
      [4.5, 10],
      [4, 6.75],
    ];
    const grooved = [
      [-4, 7.5],
      [-4.5, 13],
      [-1, 14],
      [0, 13.5],
      [1, 14],
      [4.5, 13],
      [4, 7.5],
    ];
    for (const profile of [onBarrel, grooved]) {
      expect(resolved({ ...exampleDocument(), tire: { profile } }).tire).toMatchObject({
        profile: { length: profile.length },
      });
    }
  });

  it("allows $schema at the top", () => {
    expect(resolved({ $schema: "./wellsweep-setup.schema.json", ...exampleDocument() }).name).toBe(
      "Invented half-ton",
    );
  });

  it("leaves the document as it was", () => {
    const document = exampleDocument();
    resolved(document, "wide wheel");
    expect(document).toEqual(exampleDocument());
  });

  it("never throws on any JSON, and reports issues for it", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (document) => {
        const setup = resolveSetup(document, "x.json");
        expect(setup.ok).toBe(false);
        if (!setup.ok) expect(setup.issues.length).toBeGreaterThan(0);
      }),
      { seed: 1955, numRuns: 500 },
    );
  });

  it("never throws on a setup with anything put anywhere, and gives only finite numbers", () => {
    const values = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.double(),
      fc.constantFrom(undefined, "5 5/8", "-4", 0, -1, 1e9, "1e9 in", Number.NaN),
    );
    fc.assert(
      fc.property(fc.boolean(), fc.nat(1000), values, (pitman, pick, value) => {
        const document = exampleDocument() as unknown as { truck: { steering: unknown } };
        if (pitman) document.truck.steering = pitmanSteering();
        const places = allPlaces(document);
        const [holder, key] = places[pick % places.length]!;
        holder[key] = value;
        const setup = resolveSetup(document, "x.json");
        if (setup.ok) expectFinite(setup.value);
        else for (const issue of setup.issues) expect(formatIssue(issue)).toMatch(/^x\.json: [^\n]+[^.\n]$/);
      }),
      { seed: 1955, numRuns: runs(250, 1000) },
    );
  });
});

describe("readSetup", () => {
  it("gives the JSON as typed beside the setup, nothing lost", () => {
    const text = JSON.stringify(exampleDocument());
    const read = readSetup(text, "truck.json", "narrow");
    if (!read.ok) throw new Error(read.issues.map(formatIssue).join("\n"));
    expect(read.value.document).toEqual(exampleDocument());
    expect(read.value.setup).toEqual(resolved(exampleDocument(), "narrow"));
  });

  it("names line and column of a fault in the JSON itself", () => {
    const read = readSetup('{\r\n  "format": "wellsweep-setup",\r\n  "version": 1,\r\n}', "truck.json");
    expect(read.ok ? [] : read.issues.map(formatIssue)).toEqual([
      'truck.json: ",": line 3, column 15: delete the comma before }',
    ]);
  });

  it("never throws on any text", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(readSetup(text, "x.json").ok).toBe(false);
      }),
      { seed: 1955, numRuns: 500 },
    );
  });
});

describe("SetupDocument", () => {
  it("is typed as it is typed in", () => {
    const hubFace: SetupDocument["knuckle"]["hubFace"] = "5 5/8";
    // @ts-expect-error a length is a number or text
    const wrong: SetupDocument["knuckle"]["hubFace"] = true;
    // @ts-expect-error the units of a file are "in" or "mm"
    const units: SetupDocument["units"] = "cm";
    expect([hubFace, wrong, units]).toEqual(["5 5/8", true, "cm"]);
  });
});

/** The blocks of `barestDocument` in millimeters, converted by hand-rolled arithmetic. */
function inMillimeters() {
  const { truck, knuckle } = resolved(barestDocument());
  return {
    units: "mm",
    truck: { upperArm: truck.upperArm, lowerArm: truck.lowerArm, steering: truck.steering },
    knuckle: { ...knuckle, pinAngle: 8.25 },
    wheel: { rimDiameter: 381, rimWidth: 177.8, backspacing: 95.25 },
    tire: { diameter: 711, sectionWidth: 229 },
  };
}

/** Every key of every object and list, the document's own included. */
function allPlaces(value: unknown): [Record<string | number, unknown>, string][] {
  if (typeof value !== "object" || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap((key) => [
    [holder, key] as [Record<string, unknown>, string],
    ...allPlaces(holder[key]),
  ]);
}

function expectFinite(value: unknown): void {
  if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === "object" && value !== null) Object.values(value).forEach(expectFinite);
}
