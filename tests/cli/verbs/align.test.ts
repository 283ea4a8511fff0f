import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../../studies/demoModel.ts";
import { captured, capturedJson } from "../captured.ts";
import { setupFolder } from "../setupFolder.ts";

const folder = setupFolder();
const shims = { kind: "shims", front: "1/8", rear: "1/8", most: "3/4" };
const wanted = (targets: object, adjusters: unknown = shims) =>
  demoDocument({ ...lipAlone(), hardware: null, alignment: { toe: 0.05, targets }, adjusters });
const reached = folder.write(
  "reached.json",
  wanted({ stance: "driving", camber: -0.5, caster: 4, toe: 0.1 }),
);
const beyond = folder.write("beyond.json", wanted({ camber: -4, caster: 9 }));

describe("align --json", () => {
  const { code, document } = capturedJson(["align", reached]);

  it("has exactly the keys it promises, exit 0 when the targets are reached", () => {
    expect(code).toBe(0);
    expect(Object.keys(document)).toEqual(["units", "stance", "travel", "asked", "reached", "left", "right"]);
    expect(document).toMatchObject({ units: "in", stance: "driving", travel: 0, reached: true });
    for (const side of [document.left, document.right]) {
      expect(Object.keys(side)).toEqual([
        ...["reached", "targets", "settings", "tieRod", "asBolted", "aligned", "leftOver", "sensitivities"],
      ]);
      expect(side.targets).toEqual({
        camber: expect.closeTo(-0.5, 12),
        caster: expect.closeTo(4, 12),
        toe: expect.closeTo(0.1, 12),
      });
      for (const { setting, step } of side.settings) {
        expect(setting / step).toBeCloseTo(Math.round(setting / step), 9);
      }
      expect(side.sensitivities.map(({ name, per }: { name: string; per: number }) => [name, per])).toEqual([
        ["front", 1 / 32],
        ["rear", 1 / 32],
      ]);
    }
  });

  it("re-posed with the reported shims typed in, `pose` reads what was reported", () => {
    // Front and rear moved inboard by what the stacks grew, the shaft's length kept: by hand from the file.
    const { upperArm } = (demoDocument() as { truck: { upperArm: Record<string, string[]> } }).truck;
    const inches = (text: string) => {
      const [, sign = "", whole = "0", over = "0", under = "1"] =
        /^(-?)(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text) ?? [];
      return (sign === "-" ? -1 : 1) * (Number(whole) + Number(over) / Number(under));
    };
    const [front, rear] = [upperArm.frontPivot!, upperArm.rearPivot!].map((point) => point.map(inches));
    const [a, b] = document.left.settings.map(
      ({ setting, asBolted }: { setting: number; asBolted: number }) => setting - asBolted,
    );
    const shaft = Math.hypot(...front!.map((value, i) => value - rear![i]!));
    const moved = [front!.map((v, i) => (i === 1 ? v - a : v)), rear!.map((v, i) => (i === 1 ? v - b : v))];
    const middle = moved[0]!.map((value, i) => (value + moved[1]![i]!) / 2);
    const stretched = Math.hypot(...moved[0]!.map((value, i) => value - moved[1]![i]!));
    const pivots = moved.map((point) =>
      point.map((v, i) => middle[i]! + ((v - middle[i]!) * shaft) / stretched),
    );
    // The joint's circle: same foot along the shaft, same radius; any point of it on the same side will do.
    const joint = upperArm.ballJoint!.map(inches);
    const along = (from: number[], to: number[]) => to.map((v, i) => (v - from[i]!) / shaft);
    const [was, is] = [along(front!, rear!), along(pivots[0]!, pivots[1]!)];
    const share = joint.reduce((sum, v, i) => sum + (v - front![i]!) * was[i]!, 0);
    const radius = Math.hypot(...joint.map((v, i) => v - front![i]! - share * was[i]!));
    const foot = pivots[0]!.map((v, i) => v + share * is[i]!);
    const out = joint.map((v, i) => v - foot[i]!);
    const skew = out.reduce((sum, v, i) => sum + v * is[i]!, 0);
    const flat = out.map((v, i) => v - skew * is[i]!);
    const ballJoint = flat.map((v, i) => foot[i]! + (v * radius) / Math.hypot(...flat));
    const set = folder.write(
      "set.json",
      demoDocument({
        ...lipAlone(),
        hardware: null,
        truck: {
          ...lipAlone().truck,
          upperArm: { frontPivot: pivots[0], rearPivot: pivots[1], ballJoint },
        },
        alignment: { toe: 0.1 },
      }),
    );
    const { document: pose } = capturedJson(["pose", set]);
    for (const side of ["left", "right"]) {
      for (const key of ["camber", "caster", "toe"]) {
        expect(pose[side][key]).toBeCloseTo(document[side].aligned[key], 9);
      }
      expect(pose[side].tieRodLength).toBeCloseTo(document[side].tieRod.aligned, 9);
    }
  });

  it("says when a target is beyond every stack, exit 1, with the nearest there is", () => {
    const { code, document } = capturedJson(["align", beyond]);
    expect(code).toBe(1);
    expect(document.reached).toBe(false);
    for (const { setting, least, most } of document.left.settings) {
      expect(setting).toBeGreaterThanOrEqual(least);
      expect(setting).toBeLessThanOrEqual(most);
    }
    expect(Math.abs(document.left.leftOver.caster) + Math.abs(document.left.leftOver.camber)).toBeGreaterThan(
      1,
    );
  });
});

describe("align for a person", () => {
  it("says what to put where in one sentence, then readings, settings and sensitivities", () => {
    const { code, out } = captured(["align", reached]);
    expect(code).toBe(0);
    expect(out.split("\n")[1]).toMatch(
      /^Each side, at the “driving” stance: \S+ in of shims at the front, \S+ in of shims at the rear, tie rod .* then it reads camber −0\.5\d°, caster [34]\.\d\d°, toe 0\.10°/,
    );
    expect(out).toMatch(/^camber +0\.\d\d +-0\.50 +-0\.\d\d/m);
    expect(out).toMatch(/^caster read by a 20° sweep/m);
    expect(out).toMatch(/^1\/32 in more at +Camber \(deg\)/m);
    expect(out).toMatch(/not a statement of safety/);
  });

  it("says plainly what cannot be reached", () => {
    const { code, out } = captured(["align", beyond]);
    expect(code).toBe(1);
    expect(out).toMatch(/CANNOT be reached within the adjusters' range; the nearest is/);
    const none = folder.write("none.json", wanted({ camber: 2 }, null));
    const bare = captured(["align", none]);
    expect(bare.code).toBe(1);
    expect(bare.out).toMatch(/CANNOT be reached without adjusters/);
  });

  it("tells the sides apart where they are wanted apart, and variants", () => {
    const apart = folder.write(
      "apart.json",
      wanted({ camber: -0.5, caster: 4, left: { caster: 3.5 } }, shims),
    );
    const { out } = captured(["align", apart]);
    expect(out).toMatch(/^Left side, .*\nRight side: /m);
    expect(captured(["align", reached, "--variant", "steeper pin"]).out).toMatch(/variant “steeper pin”/);
  });

  it("without targets tells the truck as bolted on, and that nothing was asked for", () => {
    const bare = folder.write("bare.json", demoDocument({ ...lipAlone(), hardware: null, adjusters: shims }));
    const { code, out } = captured(["align", bare]);
    expect(code).toBe(0);
    expect(out.split("\n")[1]).toMatch(/^No targets are set, .*alignment\.targets/);
    const { document } = capturedJson(["align", bare]);
    expect(document.asked).toBe(false);
    for (const side of [document.left, document.right]) {
      for (const key of ["camber", "caster", "toe"]) {
        expect(side.aligned[key]).toBeCloseTo(side.asBolted[key], 11);
      }
      expect(side.settings.map((one: { setting: number }) => one.setting)).toEqual([1 / 8, 1 / 8]);
      expect(side.tieRod.change).toBeCloseTo(0, 9);
      expect(side.sensitivities).toHaveLength(2);
    }
  });

  it("tells the tie rods in turns of the sleeve where its thread is given, two pitches a turn", () => {
    const base = wanted({ camber: -0.5, caster: 4, toe: 2 }, shims) as { alignment: object };
    const thread = { ...base, alignment: { ...base.alignment, sleeveThread: "5/8-18" } };
    const file = folder.write("sleeve.json", thread);
    const { left } = capturedJson(["align", file]).document;
    expect(left.tieRod.turns).toBeCloseTo(left.tieRod.change / (2 / 18), 9);
    const quarters = Math.round(4 * Math.abs(left.tieRod.turns)) / 4;
    const told = /\((?:(\d+) ?)?(?:(\d)\/(\d) )?turns? of the sleeve\)/.exec(captured(["align", file]).out)!;
    expect(Number(told[1] ?? 0) + Number(told[2] ?? 0) / Number(told[3] ?? 1)).toBe(quarters);
    const plain = capturedJson(["align", folder.write("plain.json", base)]).document;
    expect(Object.keys(plain.left.tieRod)).not.toContain("turns");
    const wrong = { ...base, alignment: { ...base.alignment, sleeveThread: "5/8" } };
    expect(captured(["align", folder.write("wrong.json", wrong)])).toMatchObject({
      code: 2,
      error: expect.stringMatching(/alignment\.sleeveThread: "5\/8": write a thread such as/),
    });
  });

  it("refuses a stance out of reach, exit 2, with the key", () => {
    const high = folder.write(
      "high.json",
      demoDocument({
        ...lipAlone(),
        stances: [{ name: "sky", travel: 30 }],
        alignment: { targets: { stance: "sky", camber: 0 } },
      }),
    );
    expect(captured(["align", high])).toMatchObject({
      code: 2,
      error: expect.stringMatching(/stances\[0\]\.travel: 30 in: out of reach: .*the nearest that goes is/),
    });
  });
});
