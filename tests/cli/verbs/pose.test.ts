import { describe, expect, it } from "vitest";
import { demoDocument, demoModel, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { documentInMm } from "../documentInMm.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const inches = folder.write("inches.json", demoDocument(lipAlone()));
const millimeters = folder.write("mm.json", documentInMm(demoModel(lipAlone()).setup));
const bare = folder.write("bare.json", demoDocument({ truck: { body: null } }));

const POINTS = [
  "wheelCenter",
  "hubFace",
  "upperBallJoint",
  "lowerBallJoint",
  "tieRodOuter",
  "tieRodInner",
  "contactPatch",
];
const ANGLES = ["camber", "steerAngle", "toe", "caster", "kingpinInclination"];
const LENGTHS = ["scrubRadius", "mechanicalTrail", "tieRodLength"];

type Point = [number, number, number];
const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe("pose --json", () => {
  const { code, document } = capturedJson(["pose", inches, "--travel", "1 1/2", "--steer", "0.25"]);

  it("has exactly the keys it promises", () => {
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual(["units", "travel", "steer", "left", "right", "gaps"]);
    for (const side of ["left", "right"]) {
      expect(Object.keys(document[side]).sort()).toEqual(
        [...POINTS, "wheelAxis", ...ANGLES, ...LENGTHS].sort(),
      );
    }
    expect(document.gaps.map((gap: object) => Object.keys(gap))).toEqual(
      new Array(2).fill(["part", "side", "gap", "point"]),
    );
    expect(document).toMatchObject({ units: "in", travel: expect.closeTo(1.5, 12), steer: 0.25 });
  });

  it("holds the knuckle, arms and wheel together: lengths of the setup, in its units", () => {
    for (const side of ["left", "right"]) {
      const at = document[side];
      expect(distance(at.upperBallJoint, at.lowerBallJoint)).toBeCloseTo(10.625, 9);
      expect(distance(at.tieRodOuter, at.tieRodInner)).toBeCloseTo(at.tieRodLength, 9);
      // Backspacing 4 1/4 on an 8 in rim, 9 in over all: offset −1/4, so the center is 1/4 outboard of the face.
      for (const i of [0, 1, 2])
        expect(at.wheelCenter[i]).toBeCloseTo(at.hubFace[i] + 0.25 * at.wheelAxis[i], 9);
      expect(distance(at.contactPatch, at.wheelCenter)).toBeCloseTo(13.25, 9);
    }
  });

  it("gives angles in degrees that the wheel axis itself shows", () => {
    for (const [side, out] of [
      ["left", 1],
      ["right", -1],
    ] as const) {
      const [x, y, z] = document[side].wheelAxis as Point;
      expect(Math.hypot(x, y, z)).toBeCloseTo(1, 12);
      expect(out * y).toBeGreaterThan(0);
      expect(document[side].camber).toBeCloseTo((-Math.asin(z) * 180) / Math.PI, 9);
      const turnedLeft = (Math.atan2(out * -x, out * y) * 180) / Math.PI;
      expect(document[side].steerAngle).toBeCloseTo(turnedLeft, 9);
      expect(document[side].toe).toBeCloseTo(-out * turnedLeft, 9);
    }
  });

  it("places the parts where they are on the truck: left y > 0, right y < 0", () => {
    for (const { part, side, point } of document.gaps) {
      expect(part).toBe("fender lip");
      expect(side === "left" ? point[1] : -point[1]).toBeGreaterThan(34);
    }
  });

  it("raises the wheel center by the travel when steering straight ahead", () => {
    const { poses } = capturedJson(["pose", inches, "--at", "0,0", "--at", "2.5,0"]).document;
    expect(poses[1].left.wheelCenter[2] - poses[0].left.wheelCenter[2]).toBeCloseTo(2.5, 7);
    expect(poses[1].right.wheelCenter[2] - poses[0].right.wheelCenter[2]).toBeCloseTo(2.5, 7);
  });

  it("gives the same truck in millimeters 25.4 times the lengths and the same angles", () => {
    const mm = capturedJson(["pose", millimeters, "--travel", "38.1", "--steer", "0.25"]).document;
    expect(mm).toMatchObject({ units: "mm", steer: 0.25 });
    expect(mm.travel).toBeCloseTo(38.1, 12);
    for (const side of ["left", "right"]) {
      for (const key of POINTS) {
        for (const i of [0, 1, 2]) expect(mm[side][key][i]).toBeCloseTo(25.4 * document[side][key][i], 6);
      }
      for (const key of LENGTHS) expect(mm[side][key]).toBeCloseTo(25.4 * document[side][key], 6);
      for (const key of ANGLES) expect(mm[side][key]).toBeCloseTo(document[side][key], 8);
    }
    expect(mm.gaps[0].gap).toBeCloseTo(25.4 * document.gaps[0].gap, 5);
  });

  it("has full precision and no negative zero", () => {
    const { out } = captured(["pose", inches, "--travel", "-0", "--steer=-0", "--json"]);
    expect(out).not.toMatch(/-0[,\s\]]/);
    expect(JSON.parse(out)).toMatchObject({ travel: 0, steer: 0 });
    expect(out).toMatch(/"camber": -?\d+\.\d{12,}/);
  });

  it("gives one document a pose with --at, in the order asked, always in a list", () => {
    const { document: one } = capturedJson(["pose", inches, "--at", "1 1/2,0.25"]);
    expect(one).toEqual({ poses: [document] });
    const { document: three } = capturedJson([
      "pose",
      inches,
      "--at=-3.5,0",
      "--at",
      "1.5,0.25",
      "--at",
      "-3 3/4,-1",
    ]);
    expect(three.poses.map((p: { travel: number; steer: number }) => [p.travel, p.steer])).toEqual([
      [expect.closeTo(-3.5, 12), 0],
      [expect.closeTo(1.5, 12), 0.25],
      [expect.closeTo(-3.75, 12), -1],
    ]);
    expect(three.poses[1]).toEqual(document);
  });

  it.each([
    [["--travel", "-3 3/4"], -3.75, 0],
    [["--travel=-3-3/4"], -3.75, 0],
    [["--travel", "-95.25 mm"], -3.75, 0],
    [["--travel", '2 1/2"', "--steer", "-1"], 2.5, -1],
    [["--travel", "−1", "--steer", "−0.5"], -1, -0.5],
    [["--travel", "1.5e0", "--steer", "5e-1"], 1.5, 0.5],
    [["--steer", "+.5"], 0, 0.5],
    [[], 0, 0],
  ])("reads %j", (options, travel, steer) => {
    const { document: read } = capturedJson(["pose", bare, ...options]);
    expect(read.travel).toBeCloseTo(travel, 12);
    expect(read.steer).toBe(steer);
  });

  it("reads numbers with an exponent as programs write them", () => {
    const { poses } = capturedJson(["pose", bare, "--at", "1.2e-05,-1e-3"]).document;
    expect(poses[0].travel).toBeCloseTo(1.2e-5, 15);
    expect(poses[0].steer).toBe(-0.001);
  });

  it("says with its exit code that something rubs there", () => {
    expect(capturedJson(["pose", inches, "--travel", "3.5", "--steer", "-0.9"]).code).toBe(1);
    expect(capturedJson(["pose", inches, "--at", "0,0", "--at", "3.5,-0.9"]).code).toBe(1);
    expect(
      capturedJson(["pose", inches, "--travel", "3.5", "--steer", "-0.9", "--variant", "narrow hub face"])
        .code,
    ).toBe(0);
  });

  it("has an empty list of gaps without body parts", () => {
    expect(capturedJson(["pose", bare]).document.gaps).toEqual([]);
  });

  it("reads a setup from standard input", () => {
    const { code, out } = captured(
      ["pose", "-", "--json"],
      JSON.stringify(demoDocument({ truck: { body: null } })),
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual(capturedJson(["pose", bare]).document);
  });
});

describe("pose --named", () => {
  const poses = [
    { name: "left on a curb", leftTravel: "1 1/2", rightTravel: "-1/4", steer: 0.25 },
    { name: "level", leftTravel: 1, rightTravel: 1 },
  ];
  const file = folder.write("named.json", demoDocument({ ...lipAlone(), poses }));

  it("is each wheel at the travel that the pose of the file says, and a stance both at its own", () => {
    const apart = ["pose", file, "--left-travel", "1 1/2", "--right-travel", "-1/4", "--steer"];
    expect(capturedJson(["pose", file, "--named", "left on a curb"])).toEqual(
      capturedJson([...apart, "0.25"]),
    );
    // Steered otherwise where that is asked for.
    expect(capturedJson(["pose", file, "--named", "left on a curb", "--steer", "-1"])).toEqual(
      capturedJson([...apart, "-1"]),
    );
    expect(capturedJson(["pose", file, "--named", "aired out"])).toEqual(
      capturedJson(["pose", file, "--travel", "3 1/4"]),
    );
  });

  it("is never one of two: a pose called as a stance is refused, with its place and the mend", () => {
    const twice = [poses[0], { ...poses[1], name: "driving" }];
    const both = folder.write("twice.json", demoDocument({ ...lipAlone(), poses: twice }));
    const { code, error } = captured(["pose", both, "--named", "driving"]);
    expect(code).toBe(2);
    expect(error).toMatch(
      /poses\[1\]\.name: "driving": is the name of a stance already; a pose needs a name/,
    );
  });

  it("names the poses and stances there are where there is none of that name", () => {
    const { code, error } = captured(["pose", file, "--named", "on its roof"]);
    expect(code).toBe(2);
    expect(error).toMatch(/--named: "on its roof": must be one of "left on a curb", "level", .*"aired out"/);
    const both = captured(["pose", file, "--named", "level", "--at", "0,0"]);
    expect([both.code, /--at: .*cannot be used with --named/.test(both.error)]).toEqual([2, true]);
  });
});

describe("pose for a person", () => {
  it("starts with a sentence, names units in headers and shows sixteenths and hundredths of a degree", () => {
    const { code, out, error } = captured([
      "pose",
      inches,
      "--travel",
      "3 1/4",
      "--variant",
      "narrow hub face",
    ]);
    expect([code, error]).toEqual([0, ""]);
    const lines = out.split("\n");
    expect(lines[0]).toBe("Fern Street shop half-ton on air, variant “narrow hub face”");
    expect(lines[2]).toMatch(/^At the “aired out” stance, with the wheels straight ahead: .*\.$/);
    expect(out).toMatch(/^Camber \(deg\) +-?\d+\.\d\d +-?\d+\.\d\d$/m);
    expect(out).toMatch(/^Scrub radius \(in\) +(\d+ )?\d+\/\d+ /m);
    expect(out).toMatch(/^Part +Side +Verdict +Gap \(in\) +Point X, Y, Z \(in\)$/m);
    expect(out).toMatch(/^fender lip +right +clear +/m);
    expect(out).toContain("not a statement of safety");
  });

  it("lines its columns up", () => {
    const { out } = captured(["pose", inches]);
    for (const block of out.split("\n\n").filter((text) => text.includes("---"))) {
      const lines = block.trimEnd().split("\n");
      const rule = lines.findIndex((line) => /^[- ]+$/.test(line));
      const widths = new Set(lines.slice(rule).map((line) => line.length));
      expect(widths.size).toBe(1);
    }
  });

  it("says at a full lock that it is worse on the way there, and short of it nothing of that", () => {
    const at = (steer: string) =>
      captured(["pose", "shared/half-ton-limits.json", "--travel", "3 1/4", "--steer", steer]).out;
    expect(at("-1")).toMatch(
      /^On the way there it is worse: at 80% of right lock the left tire rubs the fender lip by /m,
    );
    expect(at("-0.8")).not.toContain("On the way there");
  });

  it("says when the height is outside the setup's own travel", () => {
    expect(captured(["pose", bare, "--travel", "4"]).out).toContain("outside the setup's own travel");
    expect(captured(["pose", bare, "--travel", "3 1/2"]).out).not.toContain("outside the setup's own travel");
  });
});
