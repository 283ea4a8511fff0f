import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const truck = "shared/half-ton-on-air.json";
/** The same truck with nothing but its fender lip: quick to look over. */
const lip = setupFolder().write("lip.json", demoDocument(lipAlone()));
const pin = ["--field", "knuckle.pinAngle"];

describe("solve", () => {
  it("gives the value in the file's units or degrees, exact at the pose, and a truck with it has the number", () => {
    const { code, document } = capturedJson(["solve", truck, ...pin, "--for", "camber=-0.5"]);
    expect(code).toBe(0);
    expect(document).toMatchObject({
      units: "in",
      now: 8.5,
      for: "camber",
      sure: "exact",
      between: "sampled",
    });
    expect([document.wanted, document.found[0].reached]).toEqual([-0.5, expect.closeTo(-0.5, 6)]);
    const now = capturedJson(["pose", truck]).document.left.camber;
    expect(document.reachedNow).toBeCloseTo(now, 9);
    expect(document.found[0].value - 8.5).toBeCloseTo(-0.5 - now, 1);
    const scrub = capturedJson([
      "solve",
      truck,
      "--field",
      "knuckle.hubFace",
      "--for",
      "scrubRadius=1",
    ]).document;
    expect(scrub.wanted).toBe(1);
    expect(scrub.found[0].reached).toBeCloseTo(1, 6);
  });

  it("of a stance is what the wheel travel of it gives, which is told", () => {
    const asked = ["solve", truck, ...pin, "--for", "camber=-0.5"];
    const named = capturedJson([...asked, "--stance", "aired out"]).document;
    expect(named.travel).toBe(3.25);
    expect(named).toEqual(capturedJson([...asked, "--travel", "3 1/4"]).document);
    expect(named.found[0].value - capturedJson(asked).document.found[0].value).toBeGreaterThan(1);
    expect(captured([...asked, "--stance", "aired out"]).out).toContain("Exact at the “aired out” stance");
  });

  it("of a gap tells the bracket: at the value a check clears with it, beyond it does not", () => {
    const asked = [
      "solve",
      lip,
      "--field",
      "knuckle.hubFace",
      "--for",
      "gap=5/16",
      "--from",
      "5",
      "--to",
      "6 1/2",
    ];
    const { code, document } = capturedJson(asked);
    expect(code).toBe(0);
    expect(document).toMatchObject({ for: "gap", wanted: 0.3125, sure: "proven", between: "proven" });
    const [one] = document.found;
    expect(one.by).toMatchObject({ part: "fender lip" });
    expect(one.beyond - one.value).toBeCloseTo(0.1 / 25.4, 9);
    expect(one.by.gap).toBeLessThan(0.3125);
    const { out } = captured(asked);
    expect(out).toMatch(
      /^Hub-face distance 5\.\d+ in, on a tape 5 .* in \(now 6\.313 in\) gives a worst gap of 0\.31/m,
    );
    expect(out).toContain("Proven on both sides");
    expect(out).toContain("They are not a statement of safety");
  });

  it("of bump steer takes no value, and tells the least found", () => {
    const { code, document } = capturedJson([
      ...["solve", truck, "--field", "truck.steering.innerEnd[2]", "--for", "bumpSteer"],
    ]);
    expect([code, document.sure, document.found.length]).toEqual([0, "least found", 1]);
    expect(document).not.toHaveProperty("wanted");
    expect(Math.abs(document.found[0].reached)).toBeLessThan(Math.abs(document.reachedNow));
  });

  it("ends in 1 where no value gives it, with the nearest, or where the field does not change it", () => {
    const far = capturedJson(["solve", truck, ...pin, "--for", "camber=40"]);
    expect([far.code, far.document.found, far.document.unmoved]).toEqual([1, [], false]);
    expect(far.document.nearest.reached).toBeLessThan(40);
    expect(captured(["solve", truck, ...pin, "--for", "camber=40"]).out).toContain("no value from");
    const still = captured(["solve", truck, "--field", "truck.wheelbase", "--for", "camber=0"]);
    expect([still.code, still.out]).toEqual([1, expect.stringContaining("Wheelbase does not change camber")]);
  });

  it.each([
    [[...pin, "--for", "cambre=1"], 'did you mean "camber"?'],
    [[...pin, "--for", "looks"], "write one of camber"],
    [[...pin, "--for", "camber"], "camber=-0.5"],
    [[...pin, "--for", "camber=wide"], "--for"],
    [[...pin, "--for", "gap=-1/4"], "at least 0"],
    [[...pin, "--for", "gap=1/4", "--stance", "driving"], "is over all travel"],
    [[...pin, "--for", "camber=0", "--stance", "drivin"], 'did you mean "driving"?'],
    [[...pin, "--for", "camber=0", "--stance", "driving", "--travel", "1"], "choose one of them"],
    [[...pin, "--for", "bumpSteer=0"], "without a value"],
    [["--field", "allowance", "--for", "gap=1/4"], "moves no metal"],
    [["--field", "knuckle.pinAngel", "--for", "camber=0"], 'did you mean "knuckle.pinAngle"?'],
    [pin, "--for"],
  ] as const)("%j is refused with the mend", (options, mend) => {
    const { code, error, out } = captured(["solve", truck, ...options]);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(mend);
    expect(error.trim().split("\n")).toHaveLength(1);
  });
});
