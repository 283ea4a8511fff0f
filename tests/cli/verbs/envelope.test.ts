import { existsSync, linkSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { STLLoader } from "three/addons/loaders/STLLoader.js";
import { beforeAll, describe, expect, it } from "vitest";
import { run } from "../../../src/cli/run.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { cornersVolume } from "../../files/meshCases.ts";
import { runs } from "../../runs.ts";
import { demoDocument, demoModel, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson, coarseClock } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const lip = folder.write("lip.json", demoDocument(lipAlone()));
const high = folder.write("high.json", demoDocument({ truck: { body: [] }, travel: { bump: 16 } }));
const at = (name: string) => join(folder.path, name);
const MM_PER_INCH = 25.4;

/** One pose: as quick as it gets. */
const STILL = ["--travel", "0", "--straight"];

/** One side's envelope as a preview. */
const COARSE = ["--side", "left", "--budget", "1"];
const capturedCoarse = (...args: readonly string[]) =>
  captured(["envelope", ...args, ...COARSE], "", coarseClock(1));

function refusal(...args: string[]): string {
  const { code, out, error } = captured(["envelope", ...args]);
  expect([code, out]).toEqual([2, ""]);
  expect(error).toMatch(/^[^\n]+\n$/);
  return error.trimEnd();
}

describe("envelope --json", () => {
  const [stl, glb, dxf, svg] = ["a.stl", "a.glb", "a.dxf", "a.svg"].map(at) as [
    string,
    string,
    string,
    string,
  ];
  let code: number;
  // biome-ignore lint/suspicious/noExplicitAny: the test looks into a document whose shape is what it asserts
  let document: any;
  beforeAll(() => {
    const outs = [stl, glb, dxf, svg].flatMap((file) => ["--out", file]);
    ({ code, document } = capturedJson(["envelope", lip, ...outs, ...STILL, "--section", "x=0"]));
  });

  it("tells what was written, exit 0, with exactly the keys it promises", () => {
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual(["units", "travel", "steer", "files", "envelopes", "section"]);
    expect([document.units, document.travel, document.steer]).toEqual(["in", [0, 0], [0, 0]]);
    expect(document.files.map((file: object) => Object.keys(file))).toEqual([
      ...new Array(2).fill(["file", "format", "units", "bytes", "triangles"]),
      ...new Array(2).fill(["file", "format", "units", "bytes", "segments"]),
    ]);
    for (const { file, bytes } of document.files) expect(statSync(file).size).toBe(bytes);
    expect(document.files.map((file: { units: string }) => file.units)).toEqual(["mm", "m", "in", "mm"]);
    for (const envelope of document.envelopes) {
      expect(Object.keys(envelope)).toEqual(["side", "triangles", "volume", "bounds", "within"]);
    }
    expect(Object.keys(document.section)).toEqual(["axis", "at", "envelopeArea", "clearances"]);
    expect([document.section.axis, document.section.at]).toEqual(["x", 0]);
  });

  it("has both sides, the right one the mirror image where the steering is the same both ways", () => {
    const [left, right] = document.envelopes;
    expect([left.side, right.side]).toEqual(["left", "right"]);
    expect(left.bounds.min[1]).toBeGreaterThan(20);
    expect(right.bounds.max[1]).toBeCloseTo(-left.bounds.min[1], 9);
    expect(right.volume).toBeCloseTo(left.volume, 6);
  });

  it("the STL, read by three, has the triangles, the volume and the bounds it says", () => {
    const bytes = readFileSync(stl);
    const geometry = new STLLoader().parse(
      bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length),
    );
    const corners = geometry.getAttribute("position").array;
    const [left, right] = document.envelopes;
    expect(corners.length / 9).toBe(left.triangles + right.triangles);
    expect(document.files[0].triangles).toBe(corners.length / 9);
    expect(cornersVolume(corners) / MM_PER_INCH ** 3 / (left.volume + right.volume)).toBeCloseTo(1, 4);
    geometry.computeBoundingBox();
    const { min, max } = geometry.boundingBox!;
    expect(max.y / MM_PER_INCH).toBeCloseTo(left.bounds.max[1], 4);
    expect(min.y / MM_PER_INCH).toBeCloseTo(right.bounds.min[1], 4);
    expect(min.x / MM_PER_INCH).toBeCloseTo(left.bounds.min[0], 4);
  });

  it("the drawings are of the section: its parts named, its segments counted, its cautions carried", () => {
    const text = readFileSync(dxf, "utf8");
    for (const layer of [
      "ENVELOPE_LEFT",
      "ENVELOPE_RIGHT",
      "PART_FENDER_LIP_LEFT",
      "RING_TIRE_AND_RIM_LEFT",
    ]) {
      expect(text).toContain(`\r\n${layer}\r\n`);
    }
    const vertices = text.split("\r\nVERTEX\r\n").length - 1;
    const lines = text.split("\r\nLINE\r\n").length - 1;
    const open = [...text.matchAll(/\r\nPOLYLINE\r\n(?:.*\r\n){10} 70\r\n0\r\n/g)].length;
    expect(vertices + lines - open).toBe(document.files[2].segments);
    expect(document.files[3].segments).toBe(document.files[2].segments);
    const sheet = readFileSync(svg, "utf8");
    expect(sheet).toContain("Fern Street shop half-ton on air");
    expect(sheet).toMatch(
      /Section at X = 0 in: space swept by tire and rim at the “driving” stance, wheels straight ahead/,
    );
    for (const drawn of [text, sheet]) expect(drawn).toMatch(/not a statement of safety/i);
  });

  it("measures the lip in the plane: nearer than an inch or so, and no nearer than in space", () => {
    const [nearest] = document.section.clearances;
    expect(nearest.part).toBe("fender lip");
    const { document: pose } = capturedJson(["pose", lip]);
    const gap = Math.min(...pose.gaps.map((entry: { gap: number }) => entry.gap));
    // The envelope stands off the ring by at most 1.5 mm.
    expect(nearest.distanceInPlane).toBeGreaterThan(gap - 1.5 / MM_PER_INCH);
    expect(document.section.clearances).toHaveLength(2);
  });

  it("one pose's envelope holds the ring and little more", () => {
    const volume = document.envelopes[0].volume;
    const [size] = [document.envelopes[0].bounds].map(({ min, max }) =>
      max.map((value: number, i: number) => value - min[i]),
    );
    // A P235/70R15 on 8 in: about 28 in across; the ring fills a good part of its cylinder, never more than it.
    expect(size[0]).toBeGreaterThan(27);
    expect(size[0]).toBeLessThan(29);
    expect(volume).toBeLessThan((Math.PI / 4) * size[0] ** 2 * size[1]);
    expect(volume).toBeGreaterThan(0.3 * (Math.PI / 4) * size[0] ** 2 * size[1]);
  });
});

describe("ranges", () => {
  const sweep = (name: string, ...options: string[]) =>
    capturedJson(["envelope", lip, "--side", "left", "--out", at(name), ...options]).document;

  it("a stance is all steering at its height; straight is all travel; each holds the one pose", () => {
    const still = sweep("still.stl", ...STILL).envelopes[0];
    // On every change a preview, of which only what it is of is looked at.
    const isFine = runs(0, 1) === 1;
    const stance = isFine
      ? sweep("stance.stl", "--stance", "driving")
      : JSON.parse(capturedCoarse(lip, "--stance", "driving", "--out", at("stance.stl"), "--json").out);
    expect(stance.travel[0]).toBe(stance.travel[1]);
    expect(stance.steer).toEqual([-1, 1]);
    const straight = sweep("straight.stl", "--straight");
    expect([straight.travel, straight.steer]).toEqual([
      [-3.75, 3.5],
      [0, 0],
    ]);
    for (const { envelopes } of isFine ? [straight, stance] : [straight]) {
      expect(envelopes[0].volume).toBeGreaterThan(1.2 * still.volume);
      for (let axis = 0; axis < 3; axis++) {
        expect(envelopes[0].bounds.min[axis]).toBeLessThan(still.bounds.min[axis] + 1.5 / MM_PER_INCH);
        expect(envelopes[0].bounds.max[axis]).toBeGreaterThan(still.bounds.max[axis] - 1.5 / MM_PER_INCH);
      }
    }
    // Highest and lowest points of the round ring itself, from solved poses: circle by circle, c + x·a ± r·√(1 − a²) in z.
    const model = demoModel(lipAlone());
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i <= 40; i++) {
      const { droop, bump } = model.setup.travel;
      const pose = solvePose(model.frontEnd, droop + ((bump - droop) * i) / 40, 0);
      if (!pose.ok) throw new Error("out of reach");
      const { wheelCenter, wheelAxis } = pose.left;
      const level = Math.sqrt(1 - wheelAxis[2] ** 2);
      for (const [x, r] of model.ring.outline) {
        high = Math.max(high, wheelCenter[2] + x * wheelAxis[2] + r * level);
        low = Math.min(low, wheelCenter[2] + x * wheelAxis[2] - r * level);
      }
    }
    const { min, max } = straight.envelopes[0].bounds;
    for (const standsOff of [max[2] * MM_PER_INCH - high, low - min[2] * MM_PER_INCH]) {
      expect(standsOff).toBeGreaterThan(-0.5);
      expect(standsOff).toBeLessThan(1.5);
    }
  });

  it("a steering input turns the right side as the left one turned the other way", () => {
    const options = ["--travel", "0", "--steer"];
    // Previews: each as fine as the other.
    const of = (side: string, name: string, steer: string) => {
      const args = ["envelope", lip, "--side", side, "--out", at(name), ...options, steer];
      const { out } = captured([...args, "--budget", "1", "--json"], "", coarseClock(1));
      return JSON.parse(out).envelopes[0];
    };
    const left = of("left", "turned.stl", "0.6");
    const right = of("right", "other.stl", "-0.6");
    expect(right.volume / left.volume).toBeCloseTo(1, 3);
    expect(right.bounds.min[1]).toBeCloseTo(-left.bounds.max[1], 1);
    expect(right.bounds.max[0]).toBeCloseTo(left.bounds.max[0], 1);
  });

  it("travel that a joint cannot follow is named, exit 1", () => {
    const { code, out } = capturedCoarse(high, "--straight", "--out", at("high.stl"));
    expect(code).toBe(1);
    expect(out).toMatch(/The left lower ball joint cannot follow past .* of bump\./);
    expect(refusal(high, "--travel", "16", "--out", at("none.stl"))).toMatch(
      /--travel: "16": is out of reach; both wheels follow from -[\d.]+ to [\d.]+ in$/,
    );
    expect(existsSync(at("none.stl"))).toBe(false);
  });
});

describe("envelope for a person", () => {
  it("says what was written, what the section shows and what it does not say", () => {
    const args = ["envelope", lip, ...STILL, "--side", "left", "--out", at("p.svg"), "--section", "x = 0 mm"];
    const { code, out, error } = captured(args);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toMatch(
      /^Space swept by tire and rim at the “driving” stance, wheels straight ahead: left$/m,
    );
    expect(out).toMatch(/p\.svg +section, 1:1, mm +\d+ segments +\d+$/m);
    expect(out).toMatch(/^fender lip +left +\d/m);
    expect(out).toMatch(/off it a part may be nearer/);
    expect(out).toMatch(/not a statement of safety/);
  });

  it("shows progress only where a person watches, and clears it", () => {
    const shown: string[] = [];
    let error = "";
    const code = run(["envelope", lip, ...STILL, ...COARSE, "--out", at("q.stl")], {
      clock: coarseClock(1),
      writeOut: () => {},
      writeError: (text) => {
        error += text;
      },
      readInput: () => ({ bytes: new Uint8Array(), identity: null }),
      showProgress: (text) => shown.push(text),
    });
    expect([code, error]).toEqual([0, ""]);
    expect(shown.length).toBeGreaterThan(1);
    expect(shown[0]).toMatch(/^Sweeping the left side: \d+%$/);
    expect(shown.at(-1)).toBe("");
  });
});

describe("files that are there already", () => {
  it("replaces what it wrote itself, leaves anything else alone", () => {
    const mine = at("mine.stl");
    const written = () => capturedCoarse(lip, ...STILL, "--out", mine).code;
    expect(written()).toBe(0);
    const first = statSync(mine).size;
    expect(written()).toBe(0);
    expect(statSync(mine).size).toBe(first);

    const scan = at("fender.stl");
    writeFileSync(scan, "solid of somebody else");
    expect(refusal(lip, ...STILL, "--out", scan)).toMatch(
      /--out: ".*fender\.stl": is there already and was not written/,
    );
    expect(readFileSync(scan, "utf8")).toBe("solid of somebody else");
  });

  it("knows every format it wrote, and replaces what is strange only with --force", () => {
    const outs = ["f.stl", "f.glb", "f.dxf", "f.svg"].map(at);
    const args = [...STILL, "--section", "x=0", ...outs.flatMap((file) => ["--out", file])];
    const before = capturedCoarse(lip, ...args);
    expect([before.code, before.error]).toEqual([0, ""]);
    expect(capturedCoarse(lip, ...args)).toEqual(before);
    for (const file of outs) writeFileSync(file, "of another program, like Wellsweep's");
    expect(refusal(lip, ...args, "--side", "left")).toMatch(
      /f\.stl": is there already and was not written by this program; /,
    );
    for (const file of outs) expect(readFileSync(file, "utf8")).toBe("of another program, like Wellsweep's");
    expect(capturedCoarse(lip, ...args, "--force")).toEqual(before);
  });

  it("never writes over what it reads: the mesh of the setup, though it is an envelope of its own, or by a link", () => {
    const mesh = at("read.stl");
    expect(capturedCoarse(lip, ...STILL, "--out", mesh).code).toBe(0);
    const bytes = readFileSync(mesh);
    const body = [{ name: "panel", kind: "mesh", file: "read.stl", unit: "mm", place: { move: [0, 0, 40] } }];
    const setup = folder.write("reads.json", demoDocument({ truck: { body }, variants: [] }));
    linkSync(mesh, at("hard.stl"));
    symlinkSync(setup, at("setup.svg"));
    for (const [name, input] of [
      ["read.stl", "read.stl"],
      ["hard.stl", "read.stl"],
      ["setup.svg", setup],
    ] as const) {
      expect(
        refusal(setup, ...STILL, "--section", "x=0", "--out", at("x.svg"), "--out", at(name), "--force"),
      ).toContain(`is the same file as ${JSON.stringify(input)}, which is read here; choose another name`);
    }
    expect(readFileSync(mesh).equals(bytes)).toBe(true);
    expect(existsSync(at("x.svg"))).toBe(false);
  });

  it("says what keeps it from writing", () => {
    expect(refusal(lip, ...STILL, "--out", at("no/such/folder.stl"))).toMatch(
      /there is no such folder; make it first$/,
    );
    mkdirSync(at("folder.svg"), { recursive: true });
    expect(refusal(lip, ...STILL, "--section", "x=0", "--out", at("folder.svg"))).toMatch(
      /is a folder; name a file inside it$/,
    );
  });
});

describe("a mistake in an option is told with the option and its mend, before anything is worked out or written", () => {
  const out = ["--out", at("never.stl")];
  it.each<[string[], string]>([
    [[], "--out: is missing; name a file to write, such as envelope.stl"],
    [["--out", "swept.obj"], '--out: "swept.obj": must end in .stl, .glb, .dxf or .svg'],
    [["--out", "swept"], '--out: "swept": must end in'],
    [["--out", "x.svg"], '--out: "x.svg": is a section; say where with --section'],
    [["--out", "a.stl", "--out", "./a.stl"], '--out: "./a.stl": is named twice'],
    [[...out, "--section", "x=0"], '--section: "x=0": is drawn; name a .dxf or .svg file with --out'],
    [["--out", "x.svg", "--section", "w=0"], '--section: "w=0": write an axis, = and a length'],
    [["--out", "x.svg", "--section", "0"], '--section: "0": write an axis'],
    [["--out", "x.svg", "--section", "x=high"], '--section: "x=high": no number found'],
    [[...out, "--side", "front"], '--side: "front": must be left, right or both'],
    [[...out, "--stance", "drivin"], '--stance: "drivin": no such stance; did you mean "driving"?'],
    [[...out, "--stance", "zzzzzz"], '--stance: "zzzzzz": no such stance; the file\'s stances are "'],
    [[...out, "--stance", "driving", "--travel", "1"], '--travel: "1": cannot be used with --stance'],
    [[...out, "--straight", "--steer", "1"], '--steer: "1": cannot be used with --straight'],
    [[...out, "--steer", "2"], '--steer: "2": steer is a share of full lock'],
    [[...out, "--travel", "up"], '--travel: "up": no number found'],
    [[...out, "--travel", "30"], '--travel: "30": is out of reach; both wheels follow from'],
  ])("%j", (options, mend) => {
    expect(refusal(lip, ...options)).toContain(`lip.json: ${mend}`);
    expect(existsSync(at("never.stl"))).toBe(false);
  });

  it("a plane that misses says where the swept space is, and nothing is written", () => {
    const args = [
      ...STILL,
      "--side",
      "left",
      "--section",
      "x=90",
      "--out",
      at("miss.svg"),
      "--out",
      at("miss.stl"),
    ];
    expect(refusal(lip, ...args)).toMatch(
      /--section: "x=90": misses the swept space, which runs from -1\d\.\d+ to 1\d\.\d+ in along x$/,
    );
    expect(existsSync(at("miss.stl"))).toBe(false);
  });
});
