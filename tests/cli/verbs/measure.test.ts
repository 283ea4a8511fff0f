import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { newTruckDocument } from "../../../src/setup/newTruck.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";
import { withReadings } from "../../../src/studies/worksheet/withReadings.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const EXAMPLE = "shared/tape-measured.json";
const example = JSON.parse(readFileSync(EXAMPLE, "utf8"));
/** An empty truck with readings. */
const truck = (name: string, ...readings: readonly unknown[]) =>
  folder.write(name, { ...newTruckDocument("in"), readings });
const refusal = (...readings: readonly unknown[]) => captured(["measure", truck("bad.json", ...readings)]);

describe("measure --json", () => {
  const { code, document } = capturedJson(["measure", EXAMPLE]);

  it("has exactly the keys it promises, and exits 1 for the reading that is wrong", () => {
    expect(code).toBe(1);
    expect(Object.keys(document)).toEqual([
      ...["units", "points", "sizes", "residuals", "suspect", "withoutSuspect", "free", "next", "leftOut"],
    ]);
    const joint = document.points["lowerArm.ballJoint"];
    expect(Object.keys(joint)).toEqual(["at", "within", "covariance", "standing", "right"]);
    expect(joint.standing).toEqual(["measured", "measured", "measured"]);
    expect(joint.at[2]).toBeCloseTo(8.35, 0);
    expect(joint.right.at[1]).toBeLessThan(-25);
    expect(joint.covariance[0][0]).toBeCloseTo(joint.within[0] ** 2, 12);
    expect(document.residuals).toHaveLength(example.readings.length);
    expect(Object.keys(document.residuals[0])).toEqual(["reading", "off", "inSigmas"]);
    expect(document.sizes.wheelbase.is).toBeCloseTo(116.5, 9);
  });

  it("names the tape that was written an inch long, and what it would be", () => {
    const wrong = example.readings[document.suspect];
    expect(wrong.between).toEqual(["upperArm.frontPivot", "upperArm.ballJoint"]);
    const [whole, over, under] = String(wrong.is).split(/[ /]/).map(Number) as [number, number, number];
    expect(whole + over / under - document.withoutSuspect.wouldBe).toBeCloseTo(1, 0);
    expect(document.withoutSuspect.mostSigmas).toBeLessThan(3);
  });

  it("exits 0 without it", () => {
    const readings = example.readings.filter((_: unknown, i: number) => i !== document.suspect);
    const right = capturedJson(["measure", folder.write("right.json", { ...example, readings })]);
    expect([right.code, right.document.suspect, right.document.withoutSuspect]).toEqual([0, null, null]);
  });

  it("needs no truck yet: what is not read is assumed, and free", () => {
    const one = capturedJson(["measure", truck("one.json", { height: "lowerArm.ballJoint", is: "8 1/2" })]);
    expect(one.code).toBe(0);
    expect(one.document.points["lowerArm.ballJoint"].standing).toEqual(["assumed", "assumed", "measured"]);
    expect(one.document.free.length).toBeGreaterThan(15);
    expect(one.document.next.reading).toEqual(expect.any(Object));
    expect(one.document.next.pointsWithin.after).toBeLessThan(one.document.next.pointsWithin.now);
  });
});

describe("measure --apply of a truck begun with the worksheet", () => {
  it("writes what the page makes of the same readings", () => {
    const begun = ownTruckDocument({ units: "in", steering: "rack", isFull: true });
    const document = {
      ...(begun as object),
      readings: [
        { height: "lowerArm.ballJoint", is: "8 1/4" },
        { offset: "lowerArm.ballJoint", is: "26 1/2" },
        { height: "wheelCenter", is: "13 3/8" },
      ],
    };
    const out = join(folder.path, "applied.json");
    const { code } = captured(["measure", folder.write("begun.json", document), "--apply", out]);
    expect(code).toBe(0);
    const written = JSON.parse(readFileSync(out, "utf8"));
    expect(written).toEqual(JSON.parse(JSON.stringify(withReadings(document))));
    expect(written.truck.lowerArm.ballJoint[2]).toBeCloseTo(8.25, 2);
  });
});

describe("measure", () => {
  it("tells readings, points and what to do next in words", () => {
    const { code, out, error } = captured(["measure", EXAMPLE]);
    expect([code, error]).toEqual([1, ""]);
    expect(out).toContain(
      "Most likely wrong: reading 28, upper arm, front pivot to upper ball joint, reads 11 5/16 in",
    );
    expect(out).toContain("read again");
    expect(out).toContain("Next reading that helps most: ");
    expect(out).toContain("fender lip, point 4");
    expect(out).toContain("never on a jack alone");
  });

  it("uses the readings of the variant asked for", () => {
    const variants = [{ name: "later", patch: { readings: [{ height: "lowerArm.ballJoint", is: 9 }] } }];
    const file = folder.write("variants.json", {
      ...newTruckDocument("in"),
      readings: [{ height: "lowerArm.ballJoint", is: 8 }],
      variants,
    });
    expect(
      capturedJson(["measure", file, "--variant", "later"]).document.points["lowerArm.ballJoint"].at[2],
    ).toBeCloseTo(9, 9);
    expect(captured(["measure", file, "--variant", "sooner"])).toMatchObject({ code: 2, out: "" });
  });

  it("writes the truck as measured, which checks like any other", () => {
    const out = join(folder.path, "made.json");
    expect(captured(["measure", EXAMPLE, "--apply", out])).toMatchObject({ code: 1, error: "" });
    const made = JSON.parse(readFileSync(out, "utf8"));
    expect(made.truck.upperArm).not.toEqual(example.truck.upperArm);
    expect(made.readings).toEqual(example.readings);
    expect(captured(["check", out, "--tolerance", "1 mm"]).code).toBeLessThan(2);
    expect(captured(["measure", EXAMPLE, "--apply", EXAMPLE])).toMatchObject({ code: 2, out: "" });
  });

  it("leaves out what no truck can have, says so with the mend, goes on with the rest and exits 1", () => {
    const file = truck(
      "contradict.json",
      { height: "lowerArm.ballJoint", is: 8 },
      { height: "upperArm.ballJoint", is: 19 },
      { between: ["lowerArm.ballJoint", "upperArm.ballJoint"], is: 10 },
      { size: "wheelbase", is: 1160 },
    );
    const { code, out, error } = captured(["measure", file]);
    expect([code, error]).toEqual([1, ""]);
    expect(out).toMatch(/Left out: reading 3, 10, is less than its two ends .* read all three again\./);
    expect(out).toMatch(/Left out: reading 4, 1160, is more than any truck has \(10 m\)/);
    const { document } = capturedJson(["measure", file]);
    expect(document.leftOut).toMatchObject([
      { reading: 3, key: "readings[3].is", value: "1160" },
      { reading: 2, mend: expect.stringContaining("read all three again") },
    ]);
    expect(document.points["upperArm.ballJoint"].at[2]).toBeCloseTo(19, 9);
    // So does every other verb, with a line on standard error.
    const whole = folder.write("whole.json", { ...example, readings: [{ size: "wheelbase", is: -1 }] });
    expect(captured(["pose", whole])).toMatchObject({
      code: 0,
      error: expect.stringMatching(/whole\.json: Left out: reading 1, -1, must be more than 0\./),
    });
  });

  it("refuses bad readings on one line with what, where and the mend", () => {
    expect(refusal({ height: "lowerArm.ballJoint", is: "x" }).error).toMatch(
      /bad\.json: readings\[0\]\.is.*no number found/,
    );
    // With nothing else read there is no answer.
    expect(refusal({ height: "lowerArm.ballJoint", is: -3 }).error).toContain("must be 0 or more");
    expect(refusal({ size: "wheelbase", is: "2 mi" }).code).toBe(2);
    expect(refusal().error).toMatch(/readings.*required: what was read/);
    // A mark may be called anything.
    const odd = truck("odd.json", { height: "constructor", is: 0 }, { height: "toString", is: 1 });
    expect(captured(["measure", odd])).toMatchObject({
      code: 0,
      out: expect.stringContaining("mark toString"),
    });
    // What is wrong elsewhere in the setup is not in the way.
    const wild = {
      ...newTruckDocument("in"),
      wheel: { rimDiameter: 1e300 },
      readings: [{ height: "rimTop", is: 20 }],
    };
    const truckOf = { upperArm: { ballJoint: [1e300, "x", 0] }, lowerArm: { ballJoint: [1e300, 1e300, 0] } };
    expect(captured(["measure", folder.write("wild.json", { ...wild, truck: truckOf })])).toMatchObject({
      code: 0,
      error: "",
    });
    expect(captured(["measure", "-"], "no setup").code).toBe(2);
    expect(captured(["measure", EXAMPLE, "--budget=0"]).error).toContain("--budget");
  });
});
