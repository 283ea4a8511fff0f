import { describe, expect, it } from "vitest";
import type { AirSpringSetup } from "../../../src/setup/types/airTypes.ts";
import { airLoad, airPressureFor } from "../../../src/studies/air/airCurve.ts";
import { airEquilibrium } from "../../../src/studies/air/airEquilibrium.ts";
import { airRate, airVolume, closedPressure } from "../../../src/studies/air/airGas.ts";
import { airOf } from "../../../src/studies/air/airOf.ts";
import { airStateAt } from "../../../src/studies/air/airState.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { equilibriumSentence, heldAt } from "../../../src/studies/wording/airWords.ts";
import { airMotion } from "../../../src/suspension/airMotion.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { GRAVITY, MPA_PER_PSI, NEWTONS_PER_POUND } from "../../../src/units/quantity.ts";
import { planarFrontEnd, UNEQUAL_ARMS } from "../../suspension/planarWishbone.ts";
import { assembled, wishbone } from "../../suspension/trucks.ts";
import { bareSpring, limitModel, NO_LIMITS } from "../limits/limitTruck.ts";

const spring = (rest: Partial<AirSpringSetup>): AirSpringSetup => ({
  ...bareSpring([0, 0, 0], [0, 0, 1]),
  ...rest,
});
const area = (mm2: number) => ({ kind: "area", heights: [200], areas: [mm2] }) as const;

/**
 * Worked from the definitions (load = gauge pressure × effective area; p·Vⁿ constant in absolute pressure;
 * k = n·p·A²/V − p_gauge·dA/dh); terms as SAE J511. The figures are derived, not from a published example.
 */
describe("an air spring worked by hand", () => {
  const at = { kind: "area", heights: [200], areas: [20_000] } as const;
  /** 0.02 m², 0.004 m³ at 200 mm, 500 kPa over an atmosphere of 101.325 kPa. */
  const worked = (exponent: number, curve: AirSpringSetup["curve"] = at) =>
    spring({ curve, volume: { height: 200, volume: 4e6 }, exponent });

  it("6 in of effective diameter carry 1696.46 lb at 60 psi, and 1500 lb take 53.0516 psi", () => {
    const inches = spring({ curve: area(Math.PI * 3 ** 2 * 25.4 ** 2) });
    expect(airLoad(inches, 150, 60 * MPA_PER_PSI) / NEWTONS_PER_POUND).toBeCloseTo(1696.46, 2);
    expect(airPressureFor(inches, 150, 1500 * NEWTONS_PER_POUND) / MPA_PER_PSI).toBeCloseTo(53.0516, 4);
  });

  it("has the closed rate n·p·A²/V: 84.1855 N/mm at n = 1.4, 60.1325 at n = 1", () => {
    expect(airLoad(worked(1.4), 200, 0.5)).toBeCloseTo(10_000, 9);
    expect(airRate(worked(1.4), 200, 0.5)).toBeCloseTo(84.1855, 5);
    expect(airRate(worked(1), 200, 0.5)).toBeCloseTo(60.1325, 5);
  });

  it("is softer where its area falls as it shortens: 69.1855 N/mm for 0.03 m² a meter", () => {
    const tapered = { kind: "area", heights: [100, 300], areas: [17_000, 23_000] } as const;
    expect(airRate(worked(1.4, tapered), 200, 0.5)).toBeCloseTo(69.1855, 5);
  });

  it("closed, carries 15 964 N pushed in 50 mm and 6773 N let out 50 mm at n = 1.4; 14 009 and 7595 N at n = 1", () => {
    const load = (n: number, to: number) => 20_000 * closedPressure(worked(n), 200, 0.5, to);
    expect(load(1.4, 150) / 15_964.4).toBeCloseTo(1, 4);
    expect(load(1.4, 250) / 6773.2).toBeCloseTo(1, 4);
    expect(load(1, 150) / 14_008.8).toBeCloseTo(1, 4);
    expect(load(1, 250) / 7594.7).toBeCloseTo(1, 4);
  });

  it("has as its rate the slope of its closed load, whatever its curve", () => {
    const tapered = { kind: "area", heights: [100, 300], areas: [15_000, 23_000] } as const;
    const one = worked(1.38, tapered);
    const step = 0.01;
    const load = (height: number) => airLoad(one, height, closedPressure(one, 200, 0.5, height));
    expect(airRate(one, 200, 0.5)).toBeCloseTo((load(200 - step) - load(200 + step)) / (2 * step), 4);
  });

  it("gains volume by its effective area, the estimate being area × height without one", () => {
    const tapered = { kind: "area", heights: [100, 200, 300], areas: [10_000, 20_000, 22_000] } as const;
    const one = worked(1.4, tapered);
    expect(airVolume(one, 250, 0.5)).toBeCloseTo(4e6 + 50 * 20_500, 3);
    expect(airVolume(one, 150, 0.5)).toBeCloseTo(4e6 - 50 * 17_500, 3);
    expect(airVolume({ ...one, volume: null }, 250, 0.5)).toBeCloseTo(250 * 21_000, 6);
  });
});

describe("a chart of loads", () => {
  const chart = spring({
    curve: {
      kind: "loads",
      heights: [100, 200],
      pressures: [0.2, 0.4, 0.8],
      loads: [4000, 9000, 21_000, 3000, 7000, 15_000],
    },
  });

  it("is read straight between its points in both ways", () => {
    expect(airLoad(chart, 100, 0.4)).toBe(9000);
    // By hand: at 150 mm the columns are 3500, 8000, 18000; a quarter from 0.4 to 0.8 is 0.5.
    expect(airLoad(chart, 150, 0.5)).toBeCloseTo(8000 + 0.25 * 10_000, 9);
    expect(airPressureFor(chart, 150, 10_500)).toBeCloseTo(0.5, 12);
    expect(airPressureFor(chart, 150, 5750)).toBeCloseTo(0.3, 12);
  });

  it("answers nothing outside", () => {
    for (const [height, pressure] of [
      [99, 0.4],
      [201, 0.4],
      [150, 0.1],
      [150, 0.9],
    ] as const)
      expect(airLoad(chart, height, pressure)).toBeNaN();
    expect(airPressureFor(chart, 150, 3000)).toBeNaN();
    expect(airPressureFor(chart, 150, 19_000)).toBeNaN();
  });

  it("made from one effective area answers as that area does", () => {
    const pressures = [0.1, 0.3, 0.9];
    const heights = [100, 180, 300];
    const loads = heights.flatMap(() => pressures.map((pressure) => 18_000 * pressure));
    const volume = { height: 150, volume: 3e6 };
    const asChart = spring({ curve: { kind: "loads", heights, pressures, loads }, volume });
    const asArea = spring({ curve: area(18_000), volume });
    expect(airRate(asChart, 210, 0.5)).toBeCloseTo(airRate(asArea, 210, 0.5), 9);
    expect(airVolume(asChart, 250, 0.5)).toBeCloseTo(airVolume(asArea, 250, 0.5), 3);
  });
});

/** Level arms of 400 mm, a parallelogram: the wheel does not lean, so patch and center move alike. */
const level = planarFrontEnd({
  lowerInner: [300, 250],
  lowerOuter: [700, 250],
  upperInner: [300, 520],
  upperOuter: [700, 520],
  wheelCenter: [780, 360],
});

describe("the motion ratio", () => {
  it("of a level arm of 400 with an upright spring at 250 is 0.625, and cos 20° of it leaning 20°", () => {
    const { left } = assembled(level);
    const upright = airMotion(left, [0, 550, 600], [0, 550, 250], 0);
    expect(upright?.motionRatio).toBeCloseTo(0.625, 12);
    expect(upright?.patchRatio).toBeCloseTo(1, 12);
    const lean = (20 * Math.PI) / 180;
    const tilted = airMotion(
      left,
      [0, 550 - 350 * Math.sin(lean), 250 + 350 * Math.cos(lean)],
      [0, 550, 250],
      0,
    );
    // A rate of 100 gives 34.4931 at the wheel: virtual work, K·MR².
    expect(100 * tilted!.motionRatio ** 2).toBeCloseTo(34.4931, 4);
  });

  it("of unequal arms is 0.53575840 as drawn (derived from the two arms' velocities)", () => {
    const unequal = planarFrontEnd(UNEQUAL_ARMS);
    const found = airMotion(assembled(unequal).left, [0, 480, 640], [0, 500, 250 - (20 * 250) / 450], 0);
    expect(found?.motionRatio).toBeCloseTo(0.5357584, 7);
  });

  it("is the slope of height over travel, and the patch's rise that of its own, over the whole travel", () => {
    const { left } = assembled(wishbone);
    const at = (travel: number) => airMotion(left, [20, 480, 600], [15, 560, 225], travel)!;
    const patch = (travel: number) => {
      const pose = solvePose(assembled(wishbone), travel, 0);
      if (!pose.ok) throw new Error("out of reach");
      return pose.left.contactPatch[2];
    };
    for (const travel of [-75, -30, 0, 20, 75]) {
      const step = 0.01;
      const slope = -(at(travel + step).height - at(travel - step).height) / (2 * step);
      expect(at(travel).motionRatio).toBeCloseTo(slope, 8);
      const rise = (patch(travel + step) - patch(travel - step)) / (2 * step);
      expect(at(travel).patchRatio).toBeCloseTo(rise, 8);
    }
  });
});

const masses = { corner: 480, cornerRight: 500, unsprung: 45 };
const AREA = 25_000;

function airModel(input: typeof level, rest: Partial<AirSpringSetup>): Model {
  const mounts = { bodyMount: [0, 550, 500], armMount: [0, 550, 250] } as const;
  return limitModel(input, null, {
    airSpring: { ...spring({ curve: area(AREA), volume: { height: 250, volume: 5e6 } }), ...mounts, ...rest },
    masses,
    travel: { droop: -80, bump: 90 },
    stances: [{ name: "low", travel: 60 }],
  });
}

describe("a corner on its spring", () => {
  it("takes the pressure of the hand formula, (corner − unsprung)·g / motion ratio / area", () => {
    const model = airModel(level, {});
    const left = airStateAt(model, "left", 0)!;
    expect(left.pressure).toBeCloseTo(((480 - 45) * GRAVITY) / 0.625 / AREA, 12);
    expect(airStateAt(model, "right", 0)!.pressure).toBeCloseTo(((500 - 45) * GRAVITY) / 0.625 / AREA, 12);
    const low = airOf(model)!.stances[0]!.left!;
    expect(low.pressure! * AREA * low.motionRatio).toBeCloseTo(435 * GRAVITY, 6);
  });

  it("does the work the ground does: over a whole stroke, spatial arms, unsprung weight and all", () => {
    const model = airModel(wishbone, {});
    let work = 0;
    const [from, to, steps] = [-60, 70, 2000];
    const height = (travel: number) => airStateAt(model, "left", travel)!.height;
    for (let i = 0; i < steps; i++) {
      const travel = from + ((to - from) * (i + 0.5)) / steps;
      const half = (to - from) / steps / 2;
      work += airStateAt(model, "left", travel)!.load! * (height(travel - half) - height(travel + half));
    }
    const patch = (travel: number) => {
      const pose = solvePose(model.frontEnd, travel, 0);
      if (!pose.ok) throw new Error("out of reach");
      return pose.left.contactPatch[2];
    };
    const ground = 480 * GRAVITY * (patch(to) - patch(from)) - 45 * GRAVITY * (to - from);
    expect(work / ground).toBeCloseTo(1, 6);
  });

  it("rides at √(k/m)/2π, the wheel rate being the slope of the closed spring's force at the wheel", () => {
    const model = airModel(level, { exponent: 1.4 });
    const spring = model.setup.airSpring!;
    const { pressure, wheelRate, frequency, height } = airStateAt(model, "left", 30)!;
    const force = (travel: number) => {
      const motion = airStateAt(model, "left", travel)!;
      return AREA * closedPressure(spring, height, pressure!, motion.height) * motion.motionRatio;
    };
    const slope = (force(30.05) - force(29.95)) / 0.1;
    expect(wheelRate! / slope).toBeCloseTo(1, 6);
    expect(frequency).toBeCloseTo(Math.sqrt((1000 * slope) / 435) / (2 * Math.PI), 6);
  });

  it("of 1019.716 kg on 84.1855 N/mm straight under it rides at 1.44610 Hz, at n = 1 1.22218 Hz", () => {
    // The worked spring at the end of the level arm, straight up: motion ratio 1, its change 0.
    for (const [exponent, hertz] of [
      [1.4, 1.4461],
      [1, 1.22218],
    ] as const) {
      const model = airModel(level, {
        exponent,
        curve: area(20_000),
        volume: { height: 1e6, volume: 4e6 },
        // So far up that it stays upright: the motion ratio does not change.
        bodyMount: [0, 700, 1_000_250],
        armMount: [0, 700, 250],
      });
      const heavy = {
        ...model,
        setup: { ...model.setup, masses: { corner: 1019.716, cornerRight: 1019.716, unsprung: 0 } },
      };
      const state = airStateAt(heavy, "left", 0)!;
      expect(state.pressure).toBeCloseTo(0.5, 6);
      expect(state.frequency).toBeCloseTo(hertz, 4);
    }
  });

  it("says why its chart holds no pressure: of no such height, or of no such load there", () => {
    const why = (heights: readonly number[], [low, high]: readonly [number, number]) => {
      const loads = heights.flatMap(() => [low, high]);
      const curve = { kind: "loads", heights, pressures: [0.1, 0.2], loads } as const;
      const { pressure, noPressure } = airStateAt(airModel(level, { curve }), "left", 0)!;
      expect(pressure === null).toBe(noPressure !== null);
      return noPressure;
    };
    // It stands 250 mm high there and carries 6825 N.
    expect(why([200, 300], [5000, 9000])).toBeNull();
    expect(why([260, 300], [5000, 9000])).toBe("lower");
    expect(why([150, 240], [5000, 9000])).toBe("higher");
    expect(why([200, 300], [7000, 9000])).toBe("less");
    expect(why([200, 300], [1000, 6000])).toBe("more");
    const { masses: _, ...light } = airModel(level, {}).setup;
    expect(
      airStateAt({ ...airModel(level, {}), setup: { ...light, masses: null } }, "left", 0)!.noPressure,
    ).toBeNull();
  });

  it("with an empty bag is named what it sits on, the first met on the way down", () => {
    const told = (limits: Partial<typeof NO_LIMITS> | null, rest: Partial<AirSpringSetup>, pressure = 0) => {
      const model = airModel(level, rest);
      const setup = { ...model.setup, limits: limits && { ...NO_LIMITS, ...limits } };
      const found = airEquilibrium({ ...model, setup }, "left", pressure)!;
      return equilibriumSentence(found, "It", setup, { units: "mm" });
    };
    const end = "It, its bag empty, comes down at least to 90.0 mm bump, where the setup’s travel ends: ";
    expect(told(null, {})).toBe(`${end}the setup gives no bump stop.`);
    expect(told({ bumpStop: 96 }, {})).toBe(`${end}its bump stop is 6.0 mm farther down.`);
    expect(told({ bumpStop: 90 }, {}, 0.05)).toBe(
      "It, not lifted by this pressure, sits on its bump stop at 90.0 mm bump.",
    );
    // By hand: on level arms of 400 its mount at 250 rises 30 mm, to its least height, where the wheel rises 48.
    expect(told({ bumpStop: 60 }, { leastHeight: 220 })).toMatch(
      /^It, its bag empty, sits on the air spring’s own compression limit at 4[78]\.\d mm bump\.$/,
    );
    expect(told({ bumpStop: 40 }, { leastHeight: 220 })).toMatch(
      /^It, its bag empty, sits on its bump stop at 40\.0 mm bump/,
    );
    expect(told({ droopStrap: -80 }, {}, 3)).toMatch(/where its droop strap holds it\.$/);
  });

  it("sits as low with an empty bag wherever its chart begins; what its least pressure does not lift, less does not either; what that lifts is not known below it", () => {
    const curve = {
      kind: "loads",
      heights: [100, 400],
      pressures: [0.1, 0.9],
      loads: [2000, 20_000, 1500, 15_000],
    } as const;
    const model = airModel(level, { curve, leastPressure: 0.1 });
    expect(airEquilibrium(model, "left", 0)).toMatchObject({ rest: "bump", travel: 90, balances: [] });
    const said = (pressure: number) =>
      equilibriumSentence(
        airEquilibrium(model, "left", pressure)!,
        heldAt(pressure, "it", model.setup.airSpring!, "mm"),
        model.setup,
        { units: "mm" },
      );
    expect(said(0)).toMatch(
      /^At 0 \w+, below the least pressure the setup allows \([^)]+\), it, its bag empty, comes down/,
    );
    expect(said(0.05)).toMatch(/it, not lifted by this pressure, comes down at least to 90\.0 mm bump/);
    const strong = airModel(level, { curve: { ...curve, loads: [18_000, 20_000, 14_000, 15_000] } });
    const off = equilibriumSentence(airEquilibrium(strong, "left", 0.05)!, "It", strong.setup, {
      units: "mm",
    });
    expect(off).toMatch(/^It stands at a height that is not known: its load curve does not cover/);
    expect(said(0.5)).toMatch(/^At \d+(\.\d)? \w+ it/);
  });

  it("says where heights and pressures are outside their limits", () => {
    const report = airOf(airModel(level, { leastHeight: 220, greatestPressure: 0.2 }))!;
    expect(report.passed).toBe(true);
    expect(report.stances[0]!.left).toMatchObject({ heightWithin: "below", pressureWithin: "above" });
    expect(airOf(airModel(level, { leastHeight: 150 }))!.passed).toBe(false);
    expect(airOf(limitModel(level, null))).toBeNull();
  });
});

describe("where a pressure holds the truck", () => {
  it("is the height whose own pressure it is, of a spring that carries more as it shortens", () => {
    // Effective area grows as it shortens.
    const curve = { kind: "area", heights: [100, 400], areas: [40_000, 10_000] } as const;
    const model = airModel(wishbone, { curve });
    for (const travel of [-40, 0, 50]) {
      const { pressure } = airStateAt(model, "left", travel)!;
      const found = airEquilibrium(model, "left", pressure!)!;
      expect(found).toMatchObject({ rest: "balance", balances: [{ stable: true }] });
      expect(found.travel).toBeCloseTo(travel, 6);
    }
    expect(airEquilibrium(model, "left", 0)).toMatchObject({ rest: "bump", travel: 90, balances: [] });
    expect(airEquilibrium(model, "left", 3)).toMatchObject({ rest: "droop", travel: -80, balances: [] });
  });

  it("is told with its unstable balance where the spring carries less as it shortens", () => {
    const curve = { kind: "area", heights: [100, 400], areas: [10_000, 40_000] } as const;
    const model = airModel(wishbone, { curve });
    const { pressure } = airStateAt(model, "left", 0)!;
    const found = airEquilibrium(model, "left", pressure!)!;
    // Below the balance it sinks to its stop; above it, it would lift to the end.
    expect(found).toMatchObject({ rest: "bump", travel: 90 });
    expect(found.balances).toEqual([
      { travel: expect.closeTo(0, 6), height: expect.any(Number), stable: false },
    ]);
  });

  it("has two balances of a spring that is widest in the middle, as many as a fine count of signs", () => {
    const curve = { kind: "area", heights: [150, 250, 350], areas: [20_000, 30_000, 15_000] } as const;
    const model = airModel(level, { curve });
    const pressure = airStateAt(model, "left", 0)!.pressure! * 1.08;
    const found = airEquilibrium(model, "left", pressure)!;
    let signs = 0;
    let was: boolean | null = null;
    for (let i = 0; i <= 20_000; i++) {
      const needed = airStateAt(model, "left", 90 - (170 * i) / 20_000)!.pressure!;
      if (was !== null && was !== pressure > needed) signs++;
      was = pressure > needed;
    }
    expect(found.balances.length).toBe(signs);
    expect(signs).toBe(2);
    expect(found.balances.map(({ stable }) => stable)).toEqual([false, true]);
    for (const { travel } of found.balances)
      expect(airStateAt(model, "left", travel)!.pressure).toBeCloseTo(pressure, 9);
  });

  it("is not known where the curve ends on the way", () => {
    const curve = { kind: "area", heights: [240, 300], areas: [30_000, 20_000] } as const;
    const model = airModel(level, { curve });
    expect(airEquilibrium(model, "left", 0.3)).toMatchObject({ rest: "unknown", travel: null });
    expect(airEquilibrium(limitModel(level, null), "left", 0.3)).toBeNull();
  });
});
