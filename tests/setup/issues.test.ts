import { describe, expect, it } from "vitest";
import { formatIssue } from "../../src/setup/reading/issueList.ts";
import { MAX_DEPTH, MAX_FILE_CHARACTERS, MAX_ISSUES } from "../../src/setup/reading/limits.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import type { SetupIssue } from "../../src/setup/types/types.ts";
import { exampleDocument, pitmanSteering } from "./fixtures.ts";

function issuesOf(document: unknown): readonly SetupIssue[] {
  const setup = resolveSetup(document, "truck.json");
  return setup.ok ? [] : setup.issues;
}

/** The example with values put at dotted paths; `undefined` takes a key out. */
function exampleWith(changes: Readonly<Record<string, unknown>>): unknown {
  const document: unknown = { ...exampleDocument(), variants: [] };
  for (const [path, value] of Object.entries(changes)) {
    const steps = path.split(".");
    const last = steps.pop()!;
    let holder = document as Record<string, unknown>;
    for (const step of steps) holder = holder[step] as Record<string, unknown>;
    if (value === undefined) delete holder[last];
    else holder[last] = structuredClone(value);
  }
  return document;
}

const PITMAN = { "truck.steering": pitmanSteering() };
const ONE_PART = (part: object) => ({ "truck.body": [{ name: "part", ...part }] });
const MESH = {
  kind: "mesh",
  vertices: [
    [0, 0, 0],
    [1, 0, 0],
    [0, 1, 0],
  ],
  triangles: [[0, 1, 2]],
};
const PROFILE = [
  [-4, 7.5],
  [-4.75, 10],
  [-3.5, 13.75],
  [3.5, 13.75],
  [4.75, 10],
  [4, 7.5],
];
const withProfile = (profile: unknown) => ({ tire: { profile } });

/** What is changed in a sound setup, and the one issue that must come of it. */
// biome-ignore format: a table
const ONE_MISTAKE: readonly (readonly [ changes: Record<string, unknown>, key: string, value: string, mend: string | RegExp, ])[] = [
  // the file
  [{ format: "other" }, "format", '"other"', 'must be "wellsweep-setup"'],
  [{ format: undefined }, "format", "nothing", 'required: must be "wellsweep-setup"'],
  [{ version: 2 }, "version", "2", "must be 1, the only version this program reads"],
  [{ version: undefined }, "version", "nothing", "required: version of the format, 1"],
  [{ units: "inch" }, "units", '"inch"', /^must be "in" or "mm"/],
  [{ units: "im" }, "units", '"im"', 'must be "in" or "mm"; did you mean "in"?'],
  [{ units: undefined }, "units", "nothing", 'required: must be "in" or "mm"'],
  [{ name: "  " }, "name", '"  "', "must not be empty"],
  [{ name: 5 }, "name", "5", "must be text in double quotes"],
  [{ name: "a\nb" }, "name", '"a\\nb"', "must be one line of plain text"],
  [{ name: "x".repeat(201) }, "name", /^"x{58}…$/.source, "must be at most 200 characters"],
  // keys
  [{ travle: {} }, "travle", "{}", 'unknown key; did you mean "travel"?'],
  [{ "knuckle.hubFase": 5 }, "knuckle.hubFase", "5", 'unknown key; did you mean "hubFace"?'],
  [{ "wheel.color": "red" }, "wheel.color", '"red"', "unknown key; known here: rimDiameter, rimWidth, backspacing, offset, barrelDiameter, center"],
  [{ "truck.body.0.point": [] }, "truck.body[0].point", "[]", 'unknown key; did you mean "points"?'],
  [{ "truck.hub face": 1 }, 'truck["hub face"]', "1", /^unknown key; known here: wheelbase/],
  [{ "knuckle.span": undefined }, "knuckle.span", "nothing", "required: lower to upper ball joint center"],
  [{ knuckle: undefined }, "knuckle", "nothing", "required: the knuckle in its own frame"],
  [{ "truck.steering": undefined }, "truck.steering", "nothing", "required: steering linkage of the truck"],
  [{ "truck.lowerArm": 4 }, "truck.lowerArm", "4", "must be an object, { … }"],
  [{ stances: {} }, "stances", "{}", "must be a list, [ … ]"],
  // lengths, angles, points
  [{ "knuckle.hubFace": "5 5/8 im" }, "knuckle.hubFace", '"5 5/8 im"', 'unknown unit "im"; did you mean "in"?'],
  [{ "knuckle.hubFace": "5 1/0" }, "knuckle.hubFace", '"5 1/0"', '"5 1/0" divides by zero; write the fraction again'],
  [{ "knuckle.hubFace": Number.NaN }, "knuckle.hubFace", "NaN", "must be a finite number"],
  [{ "knuckle.hubFace": Number.POSITIVE_INFINITY }, "knuckle.hubFace", "a number too large", "must be a finite number"],
  [{ "knuckle.hubFace": null }, "knuckle.hubFace", "null", /^must be a length/],
  [{ "knuckle.hubFace": true }, "knuckle.hubFace", "true", /^must be a length/],
  [{ "knuckle.hubFace": 0 }, "knuckle.hubFace", "0", "must be more than 0"],
  [{ "knuckle.span": "-10 3/4" }, "knuckle.span", '"-10 3/4"', "must be more than 0"],
  [{ "knuckle.pinHeight": 4000 }, "knuckle.pinHeight", "4000", "is more than 100 m; check the number and its unit"],
  [{ "knuckle.pinHeight": "101 m" }, "knuckle.pinHeight", '"101 m"', "is more than 100 m; check the number and its unit"],
  [{ "knuckle.pinHeight": 1e307 }, "knuckle.pinHeight", "1e+307", "must be a finite number"],
  [{ "knuckle.pinAngle": 45 }, "knuckle.pinAngle", "45", "must be more than -45 and less than 45 degrees"],
  [{ "knuckle.pinAngle": "8 rad" }, "knuckle.pinAngle", '"8 rad"', /^cannot read "rad"/],
  [{ "knuckle.pinAngle": [8] }, "knuckle.pinAngle", "[8]", "must be an angle in degrees, such as 8.4"],
  [{ "knuckle.steeringArm": [0, -1, 1] }, "knuckle.steeringArm[0]", "0", /^must be at least 1 mm ahead/],
  [{ "knuckle.steeringArm": [-6, -1] }, "knuckle.steeringArm", "[-6, -1]", "must be a point of three lengths, [x, y, z]"],
  [{ "knuckle.steeringArm": [-6, -1, 1, 1] }, "knuckle.steeringArm", "[-6, -1, 1, 1]", "must be a point of three lengths, [x, y, z]"],
  [{ "knuckle.steeringArm": [-6, "x", 1] }, "knuckle.steeringArm[1]", '"x"', /^no number found/],
  // truck
  [{ "truck.wheelbase": 0 }, "truck.wheelbase", "0", "must be more than 0"],
  [{ "truck.upperArm.rearPivot": [4.5, 15.75, 18.03] }, "truck.upperArm.rearPivot", "[4.5, 15.75, 18.03]", /^is within 1 mm of frontPivot/],
  [{ "truck.lowerArm.ballJoint": [24, 10.25, 9] }, "truck.lowerArm.ballJoint", "[24, 10.25, 9]", /^lies on the line through the pivots/],
  [{ "truck.lowerArm.ballJoint": [0.25, -26.25, 8.25] }, "truck.lowerArm.ballJoint", "[0.25, -26.25, 8.25]", /^must be left of the center plane/],
  [{ "truck.steering.type": "rakc" }, "truck.steering.type", '"rakc"', 'must be "rack" or "pitman"; did you mean "rack"?'],
  [{ "truck.steering.type": undefined }, "truck.steering.type", "nothing", 'required: must be "rack" or "pitman"'],
  [{ "truck.steering.stroke": 0 }, "truck.steering.stroke", "0", "must be more than 0"],
  [{ "truck.steering.swing": 30 }, "truck.steering.swing", "30", /^unknown key; known here: type, innerEnd, stroke/],
  [{ ...PITMAN, "truck.steering.swing": 0 }, "truck.steering.swing", "0", "must be more than 0 and less than 90 degrees"],
  [{ ...PITMAN, "truck.steering.swing": 90 }, "truck.steering.swing", "90", "must be more than 0 and less than 90 degrees"],
  [{ ...PITMAN, "truck.steering.idler.axis": [0, 0, 0] }, "truck.steering.idler.axis", "[0, 0, 0]", /^has no direction/],
  [{ ...PITMAN, "truck.steering.idler.axis": [0, 0, "1 in"] }, "truck.steering.idler.axis[2]", '"1 in"', "must be a finite number"],
  [{ ...PITMAN, "truck.steering.pitman.end": [-9, 13, 5] }, "truck.steering.pitman.end", "[-9, 13, 5]", /^lies on the shaft's axis/],
  // body
  [ONE_PART({ kind: "bx", min: [0, 0, 0], max: [1, 1, 1] }), "truck.body[0].kind", '"bx"', /did you mean "box"\?$/],
  [ONE_PART({ kind: "box", min: [0, 0, 0], max: [1, 1, 0] }), "truck.body[0].max[2]", "0", "must be more than min[2]"],
  [ONE_PART({ kind: "box", min: [0, 5, 0], max: [1, 1, 1] }), "truck.body[0].max[1]", "1", "must be more than min[1]"],
  [ONE_PART({ kind: "box", min: [0, 0, 0], max: [1, 1, 1], side: "lft" }), "truck.body[0].side", '"lft"', /did you mean "left"\?$/],
  [ONE_PART({ kind: "path", radius: -0.1, points: [[0, 0, 0]] }), "truck.body[0].radius", "-0.1", "must be 0 or more"],
  [ONE_PART({ kind: "path", radius: 0, points: [] }), "truck.body[0].points", "[]", "must have at least one point"],
  [ONE_PART({ kind: "path", radius: 0, points: [[0, 0, 0], [0, 0, "9 km"]] }), "truck.body[0].points[1][2]", '"9 km"', /^unknown unit "km"/],
  [ONE_PART({ ...MESH, triangles: [[0, 1, 3]] }), "truck.body[0].triangles[0][2]", "3", "there is no such vertex; numbers run from 0 to 2"],
  [ONE_PART({ ...MESH, triangles: [[0, 1, 1.5]] }), "truck.body[0].triangles[0][2]", "1.5", "must be a whole number"],
  [ONE_PART({ ...MESH, triangles: [[0, -1, 2]] }), "truck.body[0].triangles[0][1]", "-1", "must be 0 or more"],
  [ONE_PART({ ...MESH, triangles: [[0, 1, 1e300]] }), "truck.body[0].triangles[0][2]", "1e+300", "is too large"],
  [ONE_PART({ ...MESH, triangles: [[0, 1]] }), "truck.body[0].triangles[0]", "[0, 1]", /^must be a triangle of three vertex numbers/],
  [ONE_PART({ ...MESH, triangles: [] }), "truck.body[0].triangles", "[]", "must have at least one triangle"],
  [ONE_PART({ ...MESH, triangles: undefined }), "truck.body[0].triangles", "nothing", "required with vertices"],
  [ONE_PART({ kind: "mesh" }), "truck.body[0].vertices", "nothing", "required: vertices and triangles, or file"],
  [ONE_PART({ kind: "mesh", file: "fender.stl" }), "truck.body[0].file", '"fender.stl"', /^this mesh file was not handed over/],
  [ONE_PART({ ...MESH, unit: "mm" }), "truck.body[0].unit", '"mm"', "goes with file, not with vertices"],
  [{ "truck.body.1.name": "fender lip" }, "truck.body[1].name", '"fender lip"', "is the name of entry 0 already; each needs its own"],
  // wheel
  [{ "wheel.offset": 0 }, "wheel.offset", "0", /^give backspacing or offset, not both/],
  [{ "wheel.backspacing": undefined }, "wheel.backspacing", "nothing", "required: give backspacing or offset"],
  [{ "wheel.backspacing": -1 }, "wheel.backspacing", "-1", "must be 0 or more"],
  [{ "wheel.rimWidth": 0 }, "wheel.rimWidth", "0", "must be more than 0"],
  [{ "wheel.rimDiameter": 381 }, "wheel.rimDiameter", "381", 'must be between 6 and 60 in; did you mean "381 mm"?'],
  [{ "wheel.barrelDiameter": 15 }, "wheel.barrelDiameter", "15", "must be less than rimDiameter"],
  // tire
  [{ tire: {} }, "tire.size", "nothing", "required: give one of size, diameter with sectionWidth, or profile"],
  [{ "tire.diameter": 27 }, "tire.diameter", "27", /^give one of .*; size is here too/],
  [{ "tire.sectionWidth": 9 }, "tire.sectionWidth", "9", "goes with diameter, not with size"],
  [{ "tire.size": "big" }, "tire.size", '"big"', /^not a tire size that is understood; write/],
  [{ "tire.size": "P235/65R16" }, "tire.size", '"P235/65R16"', "is made for a 16 in rim; fix this or wheel.rimDiameter"],
  [{ tire: { diameter: 15, sectionWidth: 9 } }, "tire.diameter", "15", "must be more than wheel.rimDiameter"],
  [{ tire: { diameter: 28 } }, "tire.sectionWidth", "nothing", /^required: width from sidewall/],
  [{ tire: { diameter: 28, sectionWidth: 9, treadWidth: 9.5 } }, "tire.treadWidth", "9.5", "must not be more than sectionWidth"],
  [{ "tire.loadedRadius": 16 }, "tire.loadedRadius", "16", "must not be more than half the tire's diameter"],
  [{ "tire.loadedRadius": 7 }, "tire.loadedRadius", "7", "must be more than half of wheel.rimDiameter"],
  [withProfile([[-4, 8], [4, 8]]), "tire.profile", "a list of 2", "must have at least 3 different points"],
  [withProfile([[-4, 8], [-4, 8], [4, 8]]), "tire.profile", "a list of 3", "must have at least 3 different points"],
  [withProfile([...PROFILE].reverse()), "tire.profile", "a list of 6", /^must run from the inboard bead/],
  [withProfile([[-4, 6], ...PROFILE.slice(1)]), "tire.profile[0][1]", "6", /^is inside the rim's barrel/],
  [withProfile([[-4, 0], ...PROFILE.slice(1)]), "tire.profile[0][1]", "0", "must be more than 0"],
  [withProfile([[-4, 7], [0, 7.2], [4, 7]]), "tire.profile", "a list of 3", /^lies inside the rim/],
  [withProfile([[-4, Number.NaN], ...PROFILE.slice(1)]), "tire.profile[0][1]", "NaN", "must be a finite number"],
  [withProfile([[-4, 7.5, 1], ...PROFILE.slice(1)]), "tire.profile[0]", "[-4, 7.5, 1]", "must be a profile point of two lengths, [x, r]"],
  [withProfile([[-4, 7.5], [3.5, 13.75], [-3.5, 13.75], [4, 7.5]]), "tire.profile[0]", "[-4, 7.5]", /crosses or touches the line after point 2/],
  [withProfile([[-4, 7.5], [-4, 14], [6, 14], [6, 8], [3, 8], [4, 12]]), "tire.profile[3]", "[6, 8]", /crosses or touches the line down to the barrel/],
  [withProfile([[-4, 7.5], [0, 14], [0, 10], [0, 14], [4, 7.5]]), "tire.profile[0]", "[-4, 7.5]", /crosses or touches/],
  [withProfile(Array.from({ length: 1001 }, (_, i) => [i / 100, 14])), "tire.profile", "a list of 1001", "must have at most 1000 entries"],
  // the rest
  [{ "alignment.toe": 60 }, "alignment.toe", "60", "must be more than -45 and less than 45 degrees"],
  [{ "travel.droop": 1 }, "travel.droop", "1", "must be 0 or less"],
  [{ "travel.bump": "-1/16" }, "travel.bump", '"-1/16"', "must be 0 or more"],
  [{ "stances.1.name": "parked" }, "stances[1].name", '"parked"', "is the name of entry 0 already; each needs its own"],
  [{ "stances.0.travel": undefined }, "stances[0].travel", "nothing", "required: give one of travel, lowerArmAngle, airSpringHeight, lipHeight, frameHeight"],
  [{ "stances.0.lipHeight": 28 }, "stances[0].lipHeight", "28", /^give travel or lipHeight, not both/],
  [{ allowance: -0.25 }, "allowance", "-0.25", "must be 0 or more"],
];

describe("a single mistake", () => {
  it.each(ONE_MISTAKE)("%j is one issue at %s", (changes, key, value, mend) => {
    const issues = issuesOf(exampleWith(changes));
    expect(issues.map((issue) => issue.key)).toEqual([key]);
    expect(issues[0]!.file).toBe("truck.json");
    if (value.startsWith("^")) expect(issues[0]!.value).toMatch(new RegExp(value));
    else expect(issues[0]!.value).toBe(value);
    if (typeof mend === "string") expect(issues[0]!.mend).toBe(mend);
    else expect(issues[0]!.mend).toMatch(mend);
  });

  it("has none in the sound setup the table starts from", () => {
    expect(issuesOf(exampleWith({}))).toEqual([]);
    expect(issuesOf(exampleWith(PITMAN))).toEqual([]);
    expect(issuesOf(exampleWith(ONE_PART(MESH)))).toEqual([]);
    expect(issuesOf(exampleWith(withProfile(PROFILE)))).toEqual([]);
  });

  it("of units shows in the rim: a bare 15 in a file in mm is taken for inches", () => {
    const document = { ...exampleDocument(), units: "mm", variants: [] };
    const rim = issuesOf(document).find((issue) => issue.key === "wheel.rimDiameter");
    expect(rim?.mend).toBe('must be between 6 and 60 in; did you mean "15 in"?');
  });

  it("prints on one line: file, key, value, mend", () => {
    const [issue] = issuesOf(exampleWith({ "knuckle.hubFace": "5 5/8 im" }));
    expect(formatIssue(issue!)).toBe(
      'truck.json: knuckle.hubFace: "5 5/8 im": unknown unit "im"; did you mean "in"?',
    );
    const odd = { file: "a\nb.json", key: "", value: "", mend: "line 1, column 1: the file is empty" };
    expect(formatIssue(odd)).toBe("a\\nb.json: line 1, column 1: the file is empty");
  });
});

describe("several mistakes", () => {
  it("are reported together, across blocks and within one, of shape and of sense", () => {
    const document = exampleWith({
      "knuckle.hubFase": 5,
      "knuckle.span": "ten",
      "truck.steering.stroke": -1,
      "truck.upperArm.rearPivot": [4.5, 15.75, 18],
      "truck.body.1.max": [0, 0, 0],
      "wheel.barrelDiameter": 16,
      "travel.droop": 3,
      tire: { size: "?" },
      "stances.1.name": "parked",
    });
    expect(
      issuesOf(document)
        .map((issue) => issue.key)
        .sort(),
    ).toEqual([
      "knuckle.hubFase",
      "knuckle.span",
      "stances[1].name",
      "tire.size",
      "travel.droop",
      "truck.body[1].max[1]",
      "truck.body[1].max[2]",
      "truck.steering.stroke",
      "truck.upperArm.rearPivot",
      "wheel.barrelDiameter",
    ]);
  });

  it("in an empty object name every required block", () => {
    expect(issuesOf({}).map((issue) => issue.key)).toEqual([
      "format",
      "version",
      "units",
      "truck",
      "knuckle",
      "wheel",
      "tire",
      "travel",
    ]);
  });

  it("of one sort many times are cut off and counted", () => {
    const points = Array.from({ length: 500 }, () => [0, 0, "x"]);
    const issues = issuesOf(exampleWith(ONE_PART({ kind: "path", radius: 0, points })));
    expect(issues).toHaveLength(MAX_ISSUES + 1);
    expect(formatIssue(issues.at(-1)!)).toBe("truck.json: and 450 more; fix these first");
  });
});

describe("a document that is no setup", () => {
  it.each([[null], [5], ["text"], [[]], [undefined], [true]])(
    "%j is one issue for the whole file",
    (document) => {
      expect(issuesOf(document)).toMatchObject([{ key: "" }]);
    },
  );

  it("is refused when it is nested too deep or runs in a circle", () => {
    let deep: unknown = 1;
    for (let i = 0; i <= MAX_DEPTH; i++) deep = [deep];
    const circle: Record<string, unknown> = {};
    circle.self = circle;
    for (const document of [deep, circle]) expect(issuesOf(document)).toMatchObject([{ key: "" }]);
    expect(issuesOf(circle)[0]!.mend).toMatch(/nested more than 64 deep/);
  });

  it("is refused when the file is too large, before it is read", () => {
    const read = readSetup(" ".repeat(MAX_FILE_CHARACTERS + 1), "truck.json");
    expect(read.ok ? [] : read.issues).toMatchObject([
      { key: "", value: `${MAX_FILE_CHARACTERS + 1} characters` },
    ]);
  });

  it.each(["__proto__", "constructor", "prototype"])("is refused with a key %s anywhere", (key) => {
    const text = JSON.stringify(exampleDocument());
    const inBlock = text.replace('"knuckle":{', `"knuckle":{"${key}":{"polluted":1},`);
    const inPatch = text.replace('"patch":{', `"patch":{"wheel":{"${key}":{"polluted":1}},`);
    for (const [changed, at] of [
      [inBlock, `knuckle.${key}`],
      [inPatch, `variants[0].patch.wheel.${key}`],
    ] as const) {
      const read = readSetup(changed, "truck.json");
      expect(read.ok ? [] : read.issues).toMatchObject([
        { key: at, mend: "this name is not allowed as a key; remove it" },
      ]);
    }
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
