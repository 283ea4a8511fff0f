import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const plain = { ...lipAlone(), hardware: null };
const truck = (name: string, asBuilt: unknown, more: object = {}) =>
  folder.write(name, demoDocument({ ...plain, ...more, asBuilt }));

const sheetOf = (file: string) => capturedJson(["asbuilt", file, "--jig"]).document;
const sheet = sheetOf(folder.write("plain.json", demoDocument(plain)));
/** Every reading as the sheet asks for it; the difference of the tapes is nobody's own reading. */
const asAsked = Object.fromEntries(
  sheet.readings
    .filter(({ reading }: { reading: string }) => reading !== "difference")
    .map(({ reading, mustRead }: { reading: string; mustRead: number }) => [reading, mustRead]),
);
const good = truck("good.json", { left: asAsked, right: asAsked });
const wide = truck("wide.json", {
  left: { ...asAsked, front: asAsked.front + 0.2, behind: asAsked.behind + 0.2 },
});

const SHIMS = { kind: "shims", front: "1/4", rear: "1/4", most: 1, step: "1/64" };

describe("asbuilt --jig", () => {
  it("prints what must be read, with tolerances and room to write, exit 0", () => {
    const { code, out, error } = captured(["asbuilt", good, "--jig"]);
    expect({ code, error }).toEqual({ code: 0, error: "" });
    expect(out).toContain("Tape in front");
    expect(out).toContain("________");
    expect(out).toContain("licensed");
  });

  it("has exactly the keys it promises", () => {
    expect(Object.keys(sheet)).toEqual([
      ...[
        "units",
        "clampAt",
        "faceAt",
        "halfLength",
        "jointHeight",
        "pinEnd",
        "toe",
        "drop",
        "readings",
        "offHeight",
      ],
    ]);
    expect(sheet.readings).toHaveLength(13);
    expect(sheet.halfLength).toBeCloseTo(10, 12);
  });

  // By hand: 1° over marks 12 in either way, cos of the pin angle: the tapes differ by 24 sin 1° cos a.
  it("asks for less in front where toe is built in", () => {
    const { knuckle } = demoDocument() as { knuckle: { pinAngle: number } };
    const { readings } = sheetOf(truck("toed.json", undefined, { jig: { toe: 1, halfLength: 12 } }));
    const difference = readings.find(({ reading }: { reading: string }) => reading === "difference");
    const cos = Math.cos((knuckle.pinAngle * Math.PI) / 180);
    expect(difference.mustRead).toBeCloseTo(24 * 0.0174524064 * cos, 7);
  });
});

describe("asbuilt --json", () => {
  it("gives the ordered knuckle back from the sheet's own readings, and every reading passes: exit 0", () => {
    const { code, document } = capturedJson(["asbuilt", good]);
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual([
      ...["units", "passed", "knuckle", "within", "missing", "residuals", "passes", "onTheTruck"],
    ]);
    const { knuckle } = demoDocument() as { knuckle: { pinAngle: number } };
    for (const side of ["left", "right"]) {
      expect(document.knuckle[side].pinAngle).toBeCloseTo(knuckle.pinAngle, 9);
      expect(document.knuckle[side].hubFace).toBeCloseTo(sheet.readings[0].mustRead, 9);
      expect(document.within[side].hubFace).toBeGreaterThan(0.005);
    }
    expect(document.passes).toHaveLength(26);
    expect(document.onTheTruck.asBuilt.track).toBeCloseTo(document.onTheTruck.asOrdered.track, 9);
  });

  it("tells what a hub face off by a fifth of an inch does: exit 1", () => {
    const { code, document } = capturedJson(["asbuilt", wide]);
    expect(code).toBe(1);
    expect(document.passed).toBe(false);
    const failing = document.passes.filter(({ passes }: { passes: boolean }) => !passes);
    expect(failing.map(({ reading }: { reading: string }) => reading)).toEqual(["front", "behind"]);
    const { asOrdered, asBuilt } = document.onTheTruck;
    // Other readings pull a little at it: the fifth of an inch is shared out.
    expect(document.knuckle.left.hubFace - asAsked.front).toBeCloseTo(0.2, 1);
    expect(asBuilt.track - asOrdered.track).toBeCloseTo(0.2, 1);
    expect(asBuilt.worst.gap).toBeLessThan(asOrdered.worst.gap - 0.1);
    expect(document.knuckle.right).toBeNull();
  });

  it("--aligned puts either knuckle on the truck at its targets; without targets it is refused", () => {
    const more = { alignment: { toe: 0, targets: { camber: 0, caster: 4, toe: 0 } }, adjusters: SHIMS };
    const shimmed = truck("shimmed.json", { left: { ...asAsked, faceAngle: asAsked.faceAngle + 0.6 } }, more);
    const camber = (...options: string[]) =>
      capturedJson(["asbuilt", shimmed, ...options]).document.onTheTruck.asBuilt.left.camber;
    expect(Math.abs(camber("--aligned"))).toBeLessThan(0.15);
    expect(Math.abs(camber() - camber("--aligned"))).toBeGreaterThan(0.1);
    const { code, error } = captured(["asbuilt", wide, "--aligned"]);
    expect(code).toBe(2);
    expect(error).toContain("alignment.targets: ");
  });

  it("tells one standard deviation of each number on the truck, of a side that was read", () => {
    const { left, right } = capturedJson(["asbuilt", wide]).document.onTheTruck;
    expect(left.within.camber).toBeGreaterThan(0.02);
    expect(left.within.camber).toBeLessThan(0.2);
    expect(left.within.halfTrack).toBeGreaterThan(0.005);
    expect(right.within).toBeNull();
  });

  it("checks the knuckle of the variant asked for", () => {
    const variants = [{ name: "wide", patch: { knuckle: { hubFace: asAsked.front + 0.2 } } }];
    const file = truck("variant.json", { left: { front: asAsked.front + 0.2 } }, { variants });
    expect(captured(["asbuilt", file]).code).toBe(2); // one tape tells no dimension
    const two = { front: asAsked.front + 0.2, behind: asAsked.behind + 0.2 };
    const toed = truck("variant2.json", { left: two }, { variants });
    expect(capturedJson(["asbuilt", toed]).code).toBe(1);
    expect(capturedJson(["asbuilt", toed, "--variant", "wide"]).code).toBe(0);
  });
});

describe("asbuilt", () => {
  it("tells readings, knuckle and truck in tables, with words beside every sign", () => {
    const { code, out } = captured(["asbuilt", wide]);
    expect(code).toBe(1);
    for (const words of ["FAILS 2 of 13", "passes", "As built:", "±0.", "The right knuckle was not read"])
      expect(out).toContain(words);
  });

  it("refuses a setup without readings, and too few to tell anything, with what to read", () => {
    const none = captured(["asbuilt", folder.write("none.json", demoDocument(plain))]);
    expect(none.code).toBe(2);
    expect(none.error).toContain("asBuilt: required: what was read off the jig");
    const few = captured(["asbuilt", truck("few.json", { right: { front: 6 } })]);
    expect(few.code).toBe(2);
    expect(few.error).toMatch(/asBuilt\.right: has too few readings .* read behind, faceAngle/);
  });

  it("refuses a knuckle that does not go on the truck, and names the side", () => {
    const { code, error } = captured([
      "asbuilt",
      truck("long.json", { right: { ...asAsked, span: 60, upperToArm: 59 } }),
    ]);
    expect(code).toBe(2);
    expect(error).toContain("asBuilt.right: the knuckle read there does not go on this truck");
  });
});
