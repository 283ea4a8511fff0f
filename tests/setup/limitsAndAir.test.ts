import { describe, expect, it } from "vitest";
import { MPA_PER_PSI, NEWTONS_PER_POUND } from "../../src/units/quantity.ts";
import { exampleDocument, pitmanSteering } from "./fixtures.ts";
import { issuesOf, setupOf } from "./patched.ts";

const DEG = Math.PI / 180;
const mounts = { bodyMount: [0, 18, 16], armMount: [0, 19, 9] };

describe("the limits block", () => {
  it("checks nothing that is not in it, and nothing without it", () => {
    expect(setupOf({}).limits).toBeNull();
    const { limits } = setupOf({ limits: {} });
    expect(new Set(Object.values(limits ?? {}))).toEqual(new Set([null]));
  });

  it("gives a joint named without numbers its default cone, and no more", () => {
    const { limits } = setupOf({ limits: { upperBallJoint: {}, outerTieRodEnd: {} } });
    expect(limits?.upperBallJoint).toEqual({
      cone: 20 * DEG,
      inOut: null,
      foreAft: null,
      stud: null,
      housing: null,
    });
    expect(limits?.outerTieRodEnd?.misalignment).toBeCloseTo(25 * DEG, 15);
    expect(limits?.lowerBallJoint).toBeNull();
  });

  it("is read into mm, radians and unit directions", () => {
    const { limits } = setupOf({
      limits: {
        lowerBallJoint: { cone: 18, inOut: "16°", housing: [0, 3, 4] },
        bumpStop: { travel: "3 1/8" },
        droopStrap: { travel: "-80 mm" },
        shock: { bodyMount: [1, 18, 22], lowerMount: [0, 0, 2], on: "knuckle", compressed: 10, extended: 15 },
        steeringStop: { angle: 34 },
        rackStroke: 3,
      },
    });
    expect(limits?.lowerBallJoint).toMatchObject({ inOut: 16 * DEG, housing: [0, 0.6, 0.8] });
    expect(limits).toMatchObject({ bumpStop: 79.375, droopStrap: -80, steeringStroke: 76.2 });
    expect(limits?.shock).toMatchObject({ on: "knuckle", compressed: 254, lowerMount: [0, 0, 50.8] });
  });

  it("air spring and shock have a diameter or none; a body part of their name is refused only with one", () => {
    const spring = { bodyMount: [1, 18, 15], armMount: [1, 20, 9] };
    const shock = { bodyMount: [1, 18, 22], lowerMount: [1, 20, 9], compressed: 10, extended: 15 };
    const given = setupOf({
      airSpring: { ...spring, diameter: 6 },
      limits: { shock: { ...shock, diameter: 2 } },
    });
    expect(given.airSpring?.diameter).toBeCloseTo(152.4, 9);
    expect(given.limits?.shock?.diameter).toBeCloseTo(50.8, 9);
    expect(setupOf({ airSpring: spring, limits: { shock } }).airSpring?.diameter).toBeNull();
    expect(issuesOf({ airSpring: { ...spring, diameter: 0 } })[0]).toMatch(/^airSpring.diameter: /);
    const { truck } = exampleDocument();
    const body = ["air spring", "shock"].map((name) => ({
      name,
      kind: "box",
      min: [0, 1, 2],
      max: [1, 2, 3],
    }));
    const named = { truck: { ...truck, body } };
    expect(issuesOf({ ...named, airSpring: spring, limits: { shock } })).toEqual([]);
    expect(
      issuesOf({
        ...named,
        airSpring: { ...spring, diameter: 6 },
        limits: { shock: { ...shock, diameter: 2 } },
      }),
    ).toEqual([
      expect.stringMatching(/^truck.body\[0\].name: is measured under that name already/),
      expect.stringMatching(/^truck.body\[1\].name: is measured under that name already/),
    ]);
  });

  it("refuses what cannot be, at its key", () => {
    expect(issuesOf({ limits: { upperBalljoint: {} } })[0]).toMatch(/did you mean "upperBallJoint"/);
    expect(issuesOf({ limits: { upperBallJoint: { cone: 95 } } })[0]).toMatch(
      /^limits.upperBallJoint.cone: /,
    );
    expect(issuesOf({ limits: { outerTieRodEnd: { stud: [0, 0, 0] } } })[0]).toMatch(/has no direction/);
    expect(issuesOf({ limits: { pitmanSwing: 30 } })[0]).toMatch(/this truck has a rack/);
    const { truck } = exampleDocument();
    const pitman = { truck: { ...truck, steering: pitmanSteering() } };
    expect(issuesOf({ ...pitman, limits: { rackStroke: 3 } })[0]).toMatch(/this truck has no rack/);
    expect(issuesOf({ ...pitman, limits: { pitmanSwing: 40 } })).toEqual([]);
    expect(issuesOf({ limits: { bumpStop: { travel: -2 }, droopStrap: { travel: -1 } } })[0]).toMatch(
      /^limits.droopStrap.travel: must be less than/,
    );
    const shock = { bodyMount: [1, 18, 22], lowerMount: [1, 20, 9], compressed: 15, extended: 10 };
    expect(issuesOf({ limits: { shock } })[0]).toMatch(
      /^limits.shock.extended: must be more than compressed/,
    );
  });
});

describe("the airSpring and masses blocks", () => {
  it("are read into mm, N, MPa and kg, bare numbers in psi and lb in a file in inches", () => {
    const { airSpring, masses } = setupOf({
      airSpring: {
        ...mounts,
        greatestPressure: "7 bar",
        curve: {
          kind: "loads",
          pressures: [20, 40],
          rows: [
            { height: 4, loads: [600, 1200] },
            { height: 6, loads: ["500", "4 kN"] },
          ],
        },
        volume: { height: 6, volume: "3 L" },
      },
      masses: { corner: 1000, unsprung: "45 kg" },
    });
    expect(airSpring?.greatestPressure).toBeCloseTo(0.7, 12);
    expect(airSpring?.curve).toEqual({
      kind: "loads",
      heights: [101.6, 152.4],
      pressures: [expect.closeTo(20 * MPA_PER_PSI, 12), expect.closeTo(40 * MPA_PER_PSI, 12)],
      loads: [600, 1200, 500].map((lb) => expect.closeTo(lb * NEWTONS_PER_POUND, 9)).concat(4000),
    });
    expect(airSpring).toMatchObject({ volume: { volume: 3e6 }, exponent: 1.38, atmosphere: 0.101325 });
    expect(masses).toEqual({
      corner: expect.closeTo(453.59237, 9),
      cornerRight: expect.closeTo(453.59237, 9),
      unsprung: 45,
    });
    expect(setupOf({})).toMatchObject({ airSpring: null, masses: null });
  });

  it("refuse tables that do not rise, and weights that leave nothing on the spring", () => {
    const curve = (rows: object[], pressures = [20, 40]) => ({
      airSpring: { ...mounts, curve: { kind: "loads", pressures, rows } },
    });
    const row = (height: number, loads: number[]) => ({ height, loads });
    expect(issuesOf(curve([row(4, [1, 2])]))[0]).toMatch(/at least two rows/);
    expect(issuesOf(curve([row(4, [1, 2]), row(4, [1, 2])]))[0]).toMatch(/rows\[1\].height: must be more/);
    expect(issuesOf(curve([row(4, [1, 2]), row(5, [2, 1])]))[0]).toMatch(
      /rows\[1\].loads\[1\]: must be more/,
    );
    expect(issuesOf(curve([row(4, [1, 2]), row(5, [1])]))[0]).toMatch(/one load for each of the 2 pressures/);
    expect(issuesOf(curve([row(4, [1, 2]), row(5, [1, 2])], [40, 20]))[0]).toMatch(
      /pressures\[1\]: must be more/,
    );
    expect(issuesOf({ airSpring: { ...mounts, exponent: 2 } })[0]).toMatch(/from 1 to 1.4/);
    expect(issuesOf({ airSpring: { ...mounts, leastHeight: 6, greatestHeight: 5 } })[0]).toMatch(
      /^airSpring.greatestHeight: must be more than leastHeight/,
    );
    expect(issuesOf({ masses: { corner: 90, unsprung: 95 } })[0]).toMatch(/^masses.unsprung: must be less/);
    expect(issuesOf({ masses: { corner: -90, unsprung: 9 } })[0]).toMatch(
      /^masses.corner: must be more than 0/,
    );
  });
});
