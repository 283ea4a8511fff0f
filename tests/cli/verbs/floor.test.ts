import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const DEMO = "shared/half-ton-limits.json";

/** The demo truck with the fender lip alone, and what is changed in it. */
function fileWith(name: string, change: (setup: Record<string, unknown>) => void): string {
  const demo = JSON.parse(readFileSync(DEMO, "utf8"));
  demo.truck.body = demo.truck.body.filter((part: { name: string }) => part.name === "fender lip");
  demo.hardware = undefined;
  change(demo);
  return folder.write(name, demo);
}

const file = fileWith("truck.json", () => {});

describe("floor --json", () => {
  const { code, document } = capturedJson(["floor", file]);

  it("has exactly the keys it promises", () => {
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual(["units", "rear", "below", "stances", "roll"]);
    const [airedOut] = document.stances;
    expect(Object.keys(airedOut)).toEqual(["name", "travel", "measures", "floor", "scrub"]);
    expect(Object.keys(airedOut.measures)).toEqual([
      ...["travel", "lowerArmAngle", "airSpringHeight", "lipHeight", "frameHeight"],
    ]);
    expect(Object.keys(airedOut.floor)).toEqual([
      ...["normal", "offset", "roll", "pitch", "track", "left", "right", "lip", "frame"],
      ...["rollCenter", "clearances"],
    ]);
    expect(Object.keys(airedOut.scrub[0])).toEqual(["flat", "floor", "dragging"]);
    expect(Object.keys(document.roll)).toEqual(["most", "curb", "covered", "stances"]);
    expect(Object.keys(document.roll.stances[0].cases[0])).toEqual([
      ...["asked", "state", "travels", "floor", "stops", "uncovered", "until"],
    ]);
  });

  it("agrees with `pose` on the contact patches and with `air` on the spring's height", () => {
    const { document: pose } = capturedJson(["pose", file, "--travel", "3 1/4"]);
    const { document: air } = capturedJson(["air", file]);
    const [airedOut] = document.stances;
    const { floor, measures } = airedOut;
    for (const side of ["left", "right"]) {
      floor[side].contactPatch.forEach((value: number, i: number) => {
        expect(value).toBeCloseTo(pose[side].contactPatch[i], 6);
      });
      expect(floor[side].camber).toBeCloseTo(pose[side].camber, 9);
    }
    // Level: the lip is as far above the floor as it is above the patch.
    expect(measures.lipHeight).toBeCloseTo(30.25 - pose.left.contactPatch[2], 9);
    expect(measures.airSpringHeight).toBeCloseTo(air.stances[0].left.height, 12);
  });

  it("means the same whichever measure a stance is typed by", () => {
    const again = fileWith("measured.json", (setup) => {
      setup.stances = document.stances.map(({ name, measures }: typeof document, i: number) => {
        const key = ["lipHeight", "lowerArmAngle", "airSpringHeight"][i]!;
        return { name, [key]: measures[key] };
      });
    });
    const { document: measured } = capturedJson(["floor", again]);
    measured.stances.forEach((stance: typeof document, i: number) => {
      expect(stance.travel).toBeCloseTo(document.stances[i].travel, 8);
      expect(stance.name).toBe(document.stances[i].name);
    });
    // Every verb sees them: `envelope --stance` would not find one without its travel, `air` tells it.
    const { document: air } = capturedJson(["air", again]);
    expect(air.stances.map(({ travel }: { travel: number }) => travel)).toEqual(
      document.stances.map(({ travel }: { travel: number }) => expect.closeTo(travel, 8)),
    );
  });

  it("takes another roll than the file's, with its curb", () => {
    const { document: rolled } = capturedJson(["floor", file, "--roll", "1.25°"]);
    expect(rolled.roll).toMatchObject({ most: expect.closeTo(1.25, 12), curb: 1.5 });
    const [one, other] = rolled.roll.stances[1].cases;
    expect(one.floor.roll).toBeCloseTo(1.25, 9);
    expect(other.floor.roll).toBeCloseTo(-1.25, 9);
    const without = fileWith("plain.json", (setup) => {
      setup.roll = undefined;
      setup.floor = undefined;
    });
    expect(capturedJson(["floor", without]).document).toMatchObject({ roll: null, rear: "follows" });
    expect(capturedJson(["floor", without, "--roll", "2"]).document.roll.curb).toBeNull();
  });
});

describe("floor for a person", () => {
  it("says what hangs below the scrub line, every measure, what the check has of the roll, and whose word rules", () => {
    const { code, out } = captured(["floor", file]);
    expect(code).toBe(0);
    expect(out).toMatch(/^At the “aired out” stance the engine crossmember is the lowest, 2 1\/2 in above/m);
    expect(out).toMatch(/^At the “aired out” stance with a tire flat the engine crossmember hangs/m);
    expect(out).toMatch(/^aired out +3 1\/4 +-6\.55 +4 15\/16 +26 3\/8 +11 5\/8/m);
    expect(out).toMatch(/^Roll of 3\.0° either way and one wheel 1 1\/2 in over a curb: not all of it/m);
    expect(out).toMatch(/^driving +roll to the right +-1 11\/16 +1 11\/16 +3\.00 .* yes$/m);
    expect(out).toMatch(/the codes that apply where the truck is driven rule/);
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("says of a stance the truck cannot come to what keeps it from there", () => {
    const { out } = captured(["floor", file, "--variant", "spring bracket an inch lower"]);
    expect(out).toMatch(
      /^The truck cannot come down to “aired out”: the air spring stops it at 1 3\/4 in of bump\.$/m,
    );
  });

  it("exits 1 and says so when a point or the frame is below the floor", () => {
    const low = fileWith("low.json", (setup) => {
      const floor = setup.floor as { points: { at: unknown[] }[] };
      floor.points[1]!.at = ["-22", "0", "3 1/2"];
    });
    const { code, out } = captured(["floor", low]);
    expect(code).toBe(1);
    expect(out).toMatch(/^At the “aired out” stance the exhaust crossover is 3\/8 in below the floor\.$/m);
    const sunk = fileWith("sunk.json", (setup) => {
      (setup.floor as { frame: unknown[] }).frame = [0, 13, 3];
    });
    expect(captured(["floor", sunk])).toMatchObject({ code: 1, out: expect.stringMatching(/the frame is/) });
  });

  it("tells of a stance that a slip of the tape puts outside the setup's own travel", () => {
    const slip = fileWith("slip.json", (setup) => {
      (setup.stances as unknown[]).push({ name: "slammed", lipHeight: 22 });
    });
    expect(captured(["floor", slip]).out).toMatch(
      /^The “slammed” stance, at travel \d+ \d\/\d+ in, is outside the setup's own travel\.$/m,
    );
    expect(captured(["floor", file]).out).not.toMatch(/outside the setup's own travel/);
  });

  it("says what to add to a setup that measures nothing to the floor", () => {
    const bare = fileWith("bare.json", (setup) => {
      setup.floor = undefined;
    });
    expect(captured(["floor", bare]).out).toMatch(/has no floor block: give floor\.lip/);
  });

  it.each([
    ["0", /more than 0/],
    ["45", /less than 45/],
    ["much", /angle/],
  ])("refuses a roll of %s", (roll, mend) => {
    const { code, error } = captured(["floor", file, "--roll", roll]);
    expect(code).toBe(2);
    expect(error).toMatch(mend);
  });
});

describe("pose with wheels at their own travels", () => {
  it("is the left half of one pose and the right half of another, on the floor between", () => {
    const args = ["--left-travel", "1 1/2", "--right-travel", "-1", "--steer", "0.5"];
    const { document } = capturedJson(["pose", file, ...args]);
    expect(Object.keys(document)).toEqual([
      "units",
      "travels",
      "steer",
      "left",
      "right",
      "gaps",
      "limitsPassed",
      "floor",
    ]);
    expect(document.travels).toEqual({ left: 1.5, right: -1 });
    const own = (travel: string) =>
      capturedJson(["pose", file, "--travel", travel, "--steer", "0.5"]).document;
    const [left, right] = [own("1 1/2"), own("-1")];
    expect(document.left).toEqual(left.left);
    expect(document.right).toEqual(right.right);
    const lip = (gaps: { side: string }[], side: string) => gaps.find((gap) => gap.side === side);
    expect(lip(document.gaps, "left")).toEqual(lip(left.gaps, "left"));
    expect(lip(document.gaps, "right")).toEqual(lip(right.gaps, "right"));
    // The left wheel is up: the body's left side is down.
    expect(document.floor.roll).toBeLessThan(-1);
    const { out } = captured(["pose", file, ...args]);
    expect(out).toMatch(/^The left wheel at 1 1\/2 in of bump, the right wheel at 1 in of droop, steered/m);
    expect(out).toMatch(/^Body roll -\d\.\d\d°/m);
  });

  it("takes the other wheel's travel from --travel, and the floor of any pose when asked", () => {
    const { document } = capturedJson(["pose", file, "--travel", "1/2", "--right-travel", "1"]);
    expect(document.travels).toEqual({ left: 0.5, right: 1 });
    const plain = capturedJson(["pose", file, "--travel", "1/2"]).document;
    const floored = capturedJson(["pose", file, "--travel", "1/2", "--floor"]).document;
    expect(Object.keys(plain)).toEqual(["units", "travel", "steer", "left", "right", "gaps", "limitsPassed"]);
    expect(floored).toEqual({ ...plain, floor: floored.floor });
    expect(floored.floor.roll).toBe(0);
  });

  it("names the limits each wheel passes at its own travel, the same as `limits` at that height", () => {
    const { out } = captured(["pose", file, "--left-travel", "3 15/16", "--right-travel", "0"]);
    // The bump stop is met at 3 3/4.
    expect(out).toMatch(/Past .*the left bump stop by 3\/16 in/);
    expect(out).not.toMatch(/Past .*(right|both sides)/);
    const both = captured(["pose", file, "--left-travel", "3 15/16", "--right-travel", "3 15/16"]).out;
    expect(both).toMatch(/Past .*bump stop, both sides, by 3\/16 in/);
    const past = /Past .*/.exec(captured(["pose", file, "--travel", "3 15/16"]).out)![0];
    expect(both).toContain(past);
  });

  it("refuses a wheel out of reach by its own option, and cannot be used with --at", () => {
    const far = captured(["pose", file, "--left-travel", "1", "--right-travel", "40"]);
    expect(far.code).toBe(2);
    expect(far.error).toMatch(/--right-travel: "40": the right .* cannot follow past travel/);
    const both = captured(["pose", file, "--at", "0,0", "--left-travel", "1"]);
    expect(both).toMatchObject({
      code: 2,
      error: expect.stringMatching(/--left-travel: "1": cannot be used with --at/),
    });
  });
});

describe("check with a roll block", () => {
  it("says whether it has what the roll asks for, and has no such key without one", () => {
    const { document } = capturedJson(["check", file]);
    expect(document.roll).toMatchObject({ most: expect.closeTo(3, 12), covered: false });
    expect(captured(["check", file]).out).toMatch(
      /^To have it all in the check, set travel\.bump to 3 3\/4 in/m,
    );
    const without = fileWith("no-roll.json", (setup) => {
      setup.roll = undefined;
    });
    expect(capturedJson(["check", without]).document).not.toHaveProperty("roll");
  });
});
