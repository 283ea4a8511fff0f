import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();

const BLOCKS = {
  limits: {
    upperBallJoint: { cone: 22 },
    lowerBallJoint: { cone: 20, inOut: 18, foreAft: 12 },
    outerTieRodEnd: { misalignment: 27 },
    bumpStop: { travel: "3 1/2" },
    rackStroke: 3,
  },
  airSpring: {
    ...{ bodyMount: ["1/4", 19, "15 1/2"], armMount: ["1/4", 20, 9], leastHeight: "4 3/8" },
    ...{ leastPressure: 20, greatestPressure: 110 },
    curve: {
      kind: "area",
      areas: [
        { height: 4, area: 28 },
        { height: 9, area: 22 },
      ],
    },
    volume: { height: 6, volume: 165 },
  },
  masses: { corner: 1010, unsprung: 95 },
};
/** A lower spring bracket: the spring bottoms before the truck is aired out. */
const LOW = { airSpring: { ...BLOCKS.airSpring, bodyMount: ["1/4", 19, "14 1/2"] } };

const clear = { truck: { body: [] }, hardware: null };
const kept = folder.write("kept.json", demoDocument({ ...clear, ...BLOCKS }));
const low = folder.write("low.json", demoDocument({ ...clear, ...BLOCKS, ...LOW }));
const none = folder.write("none.json", demoDocument(clear));
/** The fender lip with a steering stop before its worst gap, and with stops that leave nothing. */
const stops = { steeringStop: { angle: 12 }, droopStrap: { travel: "-2 1/2" } };
const stopped = folder.write("stopped.json", demoDocument({ ...lipAlone(), hardware: null, limits: stops }));
const tooTight = { bumpStop: { travel: -5 } };
const nowhere = folder.write(
  "nowhere.json",
  demoDocument({ ...lipAlone(), hardware: null, limits: tooTight }),
);
const lip = folder.write("lip.json", demoDocument({ ...lipAlone(), hardware: null }));

describe("limits", () => {
  it("are all kept, exit 0, with what is not checked and the cautions", () => {
    const { code, out, error } = captured(["limits", kept]);
    expect([code, error]).toEqual([0, ""]);
    expect(out.split("\n")[1]).toBe("Every limit given is kept over all travel and both locks.");
    expect(out).toMatch(/^bump stop +left +0 +0% +3 1\/2 +0%$/m);
    expect(out).toMatch(
      /^Not checked: inner tie rod end, droop strap, shock length, steering stop, air spring extension\.$/m,
    );
    expect(out).toMatch(/for its maker to say/);
    expect(out).not.toMatch(/\bis safe\b|\bare safe\b/);
  });

  it("passed are named with where they start, exit 1; what is met first when aired out is told", () => {
    const { code, out } = captured(["limits", low]);
    expect(code).toBe(1);
    expect(out.split("\n")[1]).toMatch(
      /^Air spring compression, both sides: past its limit from 2 \d+\/\d+ in of bump on, by \d+\/\d+ in at most\.$/,
    );
    expect(out).toMatch(/At the “aired out” stance, .*\n {2}straight ahead: left air spring compression -/);
    expect(out).toMatch(/^ +3 1\/2 +not here: left air spring compression$/m);
  });

  it("as JSON: margins, starts, stances and region agree with each other", () => {
    const { code, document } = capturedJson(["limits", low]);
    expect(code).toBe(1);
    expect(Object.keys(document)).toEqual(["units", "passed", "limits", "stances", "region", "notChecked"]);
    const passed = document.limits.filter((limit: { margin: number }) => limit.margin < -1e-6);
    expect(passed.map(({ name, side }: { name: string; side: string }) => [name, side])).toEqual([
      ["air spring compression", "left"],
      ["air spring compression", "right"],
    ]);
    const { starts, measure, bound, margin, travel } = passed[0];
    expect([measure, starts.droop, starts.left, starts.right]).toEqual(["length", null, null, null]);
    expect(travel).toBeCloseTo(3.5, 9);
    expect(margin - bound).toBeLessThanOrEqual(0.05 / 25.4);
    const [airedOut, driving] = document.stances;
    expect([airedOut.name, airedOut.first]).toEqual(["aired out", null]);
    expect(driving.first.bump).toMatchObject({ stop: "limit", name: "air spring compression" });
    expect(driving.first.bump.at).toBeCloseTo(starts.bump, 3);
    for (const { steer, bump } of document.region.atSteers)
      expect([steer, Math.abs(bump.at - starts.bump) < 1e-3]).toEqual([steer, true]);
    for (const limit of document.limits) expect(limit.bound).toBeLessThanOrEqual(limit.margin);
  });

  it("where there are none says so, exit 0", () => {
    const { code, out } = captured(["limits", none]);
    expect([code, out.split("\n")[1]]).toEqual([
      0,
      "The setup gives no limits: add a limits or airSpring block.",
    ]);
  });
});

describe("check of a setup with limits", () => {
  it("names each limit passed, exit 1, though everything clears", () => {
    const { code, document } = capturedJson(["check", low]);
    expect([code, document.verdict]).toEqual([1, "clear"]);
    expect(document.limitsPassed.map(({ name }: { name: string }) => name)).toEqual([
      "air spring compression",
      "air spring compression",
    ]);
    expect(captured(["check", low]).out).toMatch(/^Air spring compression, both sides: past its limit from/m);
  });

  it("that are kept is exit 0 with an empty list; without limits the answer has no such key", () => {
    const { code, document } = capturedJson(["check", kept]);
    expect([code, document.limitsPassed, document.limitedBy]).toEqual([0, [], []]);
    expect(Object.keys(capturedJson(["check", lip]).document)).toEqual([
      "units",
      "verdict",
      "worst",
      "parts",
    ]);
  });

  it("cut the range: nothing past them is counted, in words and as a field", () => {
    const { document: free } = capturedJson(["check", lip]);
    const { code, document } = capturedJson(["check", stopped]);
    expect([code, document.limitedBy]).toEqual([1, ["droop strap", "steering stop"]]);
    expect(document.worst.gap).toBeGreaterThan(free.worst.gap + 0.05);
    const { out } = captured(["check", stopped]);
    expect(out).toMatch(/^Poses past the droop strap and the steering stop are not counted\.$/m);
    expect(out).toMatch(/^Each gap is the worst over all travel and both locks within the limits; no pose/m);
    expect(captured(["check", lip]).out).not.toMatch(/counted|limits/);
  });

  it("that every pose passes leave all poses counted, and that is said", () => {
    const { code, document } = capturedJson(["check", nowhere]);
    expect([code, document.limitedBy]).toEqual([1, []]);
    expect(document.parts).toEqual(capturedJson(["check", lip]).document.parts);
    expect(captured(["check", nowhere]).out).toMatch(
      /^Every pose passes some limit, so every pose is counted\.$/m,
    );
  });
});

describe("limits in a map", () => {
  const size = ["--rows", "6", "--cols", "5"];

  it("are named per cell and in the curves, as JSON; without limits there are no such keys", () => {
    const { code, document } = capturedJson(["map", stopped, ...size]);
    expect(code).toBe(1);
    // Rows from full droop up; columns from right lock to left lock.
    expect(document.pastLimit[0][2]).toEqual({ side: expect.any(String), name: "droop strap" });
    expect(document.pastLimit[5]).toEqual([
      { side: "right", name: "steering stop" },
      { side: "right", name: "steering stop" },
      null,
      { side: "left", name: "steering stop" },
      { side: "left", name: "steering stop" },
    ]);
    expect(document.limitBorder.length).toBeGreaterThan(0);
    expect(document.left.gap[0][2]).toEqual(expect.any(Number));
    const middle = document.steerAtHeight[3];
    expect(middle.leftTurn.touch.either).toEqual({
      steer: expect.any(Number),
      stop: "limit",
      side: "left",
      name: "steering stop",
    });
    const { document: free } = capturedJson(["map", lip, ...size]);
    expect(Object.keys(free)).not.toContain("pastLimit");
    expect(Object.keys(free)).not.toContain("limitBorder");
    expect(free.left).toEqual(document.left);
  });

  it("are marked in the table, named beside it, and have a column of their own as CSV", () => {
    const { out } = captured(["map", stopped, ...size]);
    expect(out).toMatch(/, ! past a limit \(.*steering stop.*\)$/m);
    expect(out).toMatch(/^ +-3 3\/4 +!\d+ +!\d+ /m);
    expect(out).toMatch(/- \(\d+%: left steering stop\)/);
    expect(out).toMatch(/- \(past (left|right) droop strap\)/);
    const [head, first] = captured(["map", stopped, "--csv", ...size]).out.split("\n");
    expect(head).toMatch(/,status,limit passed$/);
    expect(first).toMatch(/,ok,(left|right) (droop strap|steering stop)$/);
    expect(captured(["map", lip, "--csv", ...size]).out.split("\n")[0]).toMatch(/,status$/);
  });

  it("are exit 1 where nothing touches", () => {
    expect(captured(["map", kept, ...size]).code).toBe(0);
    expect(captured(["map", low, ...size]).code).toBe(1);
  });
});

describe("a pose past a limit", () => {
  it("says so, by how much", () => {
    expect(captured(["pose", stopped, "--travel", "-3", "--steer", "0"]).out).toMatch(
      /Past the droop strap, both sides, by 1\/2 in\./,
    );
    expect(captured(["pose", stopped, "--travel", "0", "--steer", "1"]).out).toMatch(
      /Past the left steering stop by \d+\.\d° and the right steering stop by \d+\.\d°\./,
    );
    expect(captured(["pose", stopped, "--travel", "0", "--steer", "0"]).out).not.toMatch(/[Pp]ast/);
  });
});

describe("air", () => {
  it("gives height, motion ratio, load, pressure, rates and ride at each stance, with cautions", () => {
    const { code, out, error } = captured(["air", kept]);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toMatch(/^driving, left +6 9\/16 +0\.522 +\d+ +\d+\.\d +\d+ +\d+ +\d\.\d\d$/m);
    expect(out).toMatch(/Air under pressure can kill/);
    expect(out).not.toMatch(/\bis safe\b|\bare safe\b/);
  });

  it("as JSON agrees with the hand formula for load and pressure to the change of camber", () => {
    const { document } = capturedJson(["air", kept]);
    expect([document.pressureUnit, document.loadUnit]).toEqual(["psi", "lb"]);
    const { left } = document.stances[1];
    const load = (1010 - 95) / left.motionRatio;
    expect(left.load / load).toBeCloseTo(1, 1);
    const area = 28 + ((22 - 28) * (left.height - 4)) / 5;
    expect(left.pressure).toBeCloseTo(left.load / area, 9);
  });

  it("stands at a pressure where the pressure needed is that one", () => {
    const needed = capturedJson(["air", kept]).document.stances[1].left.pressure;
    const { document } = capturedJson(["air", kept, "--pressure", `${needed} psi`]);
    const [left] = document.atPressure;
    expect(left.balances.some(({ travel }: { travel: number }) => Math.abs(travel) < 1e-6)).toBe(true);
    expect(captured(["air", kept, "--pressure", "0"]).out).toMatch(
      /its bag empty, sits on its bump stop at 3 1\/2 in bump\./,
    );
  });

  it("outside its limits is exit 1, and names the stance", () => {
    const { code, out } = captured(["air", low]);
    expect(code).toBe(1);
    expect(out).toMatch(/less than its least height/);
    expect(captured(["air", kept, "--pressure", "130"]).code).toBe(1);
  });

  it("refuses what it cannot answer, exit 2", () => {
    expect(captured(["air", none])).toMatchObject({
      code: 2,
      error: expect.stringMatching(/has no airSpring block; add one/),
    });
    expect(captured(["air", kept, "--pressure", "60 pis"]).error).toMatch(/did you mean "psi"/);
    expect(captured(["air", kept, "--pressure", "-5"]).error).toMatch(/must be 0 or more/);
  });
});

describe("a pose past limits, as a document", () => {
  const passedOf = (document: unknown) =>
    (document as { limitsPassed: { side: string; name: string; margin: number; measure: string }[] })
      .limitsPassed;

  it("names those the text names, left and right, for one pose and for several", () => {
    const text = captured(["pose", stopped, "--travel", "-3", "--steer", "0.9"]).out;
    const told = /Past .*\./.exec(text)?.[0] ?? "";
    const { document: one } = capturedJson(["pose", stopped, "--travel", "-3", "--steer", "0.9"]);
    const passed = passedOf(one);
    expect(passed.map(({ name, side }) => `${side} ${name}`).sort()).toEqual([
      "left droop strap",
      "left steering stop",
      "right droop strap",
      "right steering stop",
    ]);
    for (const { margin, name, side, measure } of passed) {
      // The text names the first ones by side; the strap's two sides are alike and told once.
      // An excess is rounded up: told smaller than it is, it would do harm.
      const excess = (Math.ceil(-10 * margin) / 10).toFixed(1);
      if (measure === "angle") expect(told).toContain(`${side} ${name} by ${excess}°`);
      expect(margin).toBeLessThan(0);
      if (name === "droop strap") expect(margin).toBeCloseTo(-0.5, 6);
    }
    const { document: many } = capturedJson([
      "pose",
      stopped,
      "--at",
      "-3,0.9",
      "--at",
      "-3,0",
      "--at",
      "0,0",
    ]);
    const poses = (many as { poses: unknown[] }).poses;
    expect(passedOf(poses[0])).toEqual(passed);
    expect(passedOf(poses[1]).map(({ name }) => name)).toEqual(["droop strap", "droop strap"]);
    expect(passedOf(poses[2])).toEqual([]);
  });

  it("tells each wheel at a travel of its own by itself, and says nothing where no limit is given", () => {
    const { document: apart } = capturedJson(["pose", stopped, "--left-travel", "-3"]);
    expect(passedOf(apart).map(({ name, side }) => `${side} ${name}`)).toEqual(["left droop strap"]);
    expect(capturedJson(["pose", lip]).document).not.toHaveProperty("limitsPassed");
  });

  it("a limit that is passed exits 1 though nothing rubs; one that is kept exits 0", () => {
    const alone = folder.write("alone.json", demoDocument({ ...clear, limits: stops }));
    for (const args of [
      ["--travel", "-3"],
      ["--at", "0,0", "--at", "-3,0"],
      ["--left-travel", "-3"],
    ]) {
      const { code, out } = captured(["pose", alone, ...args]);
      expect(code).toBe(1);
      expect(out).toMatch(/Past .*droop strap/);
    }
    expect(capturedJson(["pose", alone]).code).toBe(0);
  });
});
