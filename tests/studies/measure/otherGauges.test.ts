import { Euler, Matrix4, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import { archFromPhoto } from "../../../src/studies/measure/archFromPhoto.ts";
import {
  type KnownPixel,
  type Pixel,
  type PlanePoint,
  photoPlane,
} from "../../../src/studies/measure/photoPlane.ts";
import { scanOnPoints } from "../../../src/studies/measure/scanOnPoints.ts";
import { wheelFromStraightedge } from "../../../src/studies/measure/sizeValues.ts";
import { tireFromCalipers } from "../../../src/studies/measure/tireFromCalipers.ts";
import { normals, uniforms } from "./measureCases.ts";

/** A pinhole camera worked out as such: turned, moved, divided by depth. Looks at the left side from out there. */
function camera(turn: Vec3, out: number) {
  const place = new Matrix4().makeRotationFromEuler(new Euler(...turn));
  return ([ahead, up]: PlanePoint): Pixel => {
    const p = new Vector3(-ahead, up - 400, 0).applyMatrix4(place);
    return [2000 + (1800 * p.x) / (out - p.z), 1500 - (1800 * p.y) / (out - p.z)];
  };
}

const ARCH: readonly PlanePoint[] = [
  [420, 350],
  [300, 640],
  [0, 760],
  [-310, 630],
  [-430, 340],
];
const CORNERS: readonly PlanePoint[] = [
  [520, 100],
  [500, 800],
  [-480, 820],
  [-510, 90],
];

describe("a side photo", () => {
  it("taken at a slant is corrected by four points: a pinhole camera's picture goes back to the truck", () => {
    const shoot = camera([0.12, 0.3, -0.05], 2600);
    const known = CORNERS.map((at): KnownPixel => ({ pixel: shoot(at), at }));
    const made = photoPlane(known, true);
    if (!made.ok) throw new Error(made.mend);
    expect(Math.max(...made.plane.residuals)).toBeLessThan(1e-6);
    for (const at of ARCH) {
      const back = made.plane.toTruck(shoot(at))!;
      expect(Math.hypot(back[0] - at[0], back[1] - at[1])).toBeLessThan(1e-6);
    }
  });

  it("agrees with the closed form of the square to quadrilateral transform (Heckbert 1989, from memory)", () => {
    const quad: readonly Pixel[] = [
      [310, 2200],
      [2900, 2050],
      [2700, 420],
      [420, 610],
    ];
    const square: readonly PlanePoint[] = [
      [0, 0],
      [-1000, 0],
      [-1000, 1000],
      [0, 1000],
    ];
    const made = photoPlane(
      quad.map((pixel, i) => ({ pixel, at: square[i]! })),
      true,
    );
    if (!made.ok) throw new Error(made.mend);
    const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = quad as [Pixel, Pixel, Pixel, Pixel];
    const [dx1, dx2, sx] = [x1 - x2, x3 - x2, x0 - x1 + x2 - x3];
    const [dy1, dy2, sy] = [y1 - y2, y3 - y2, y0 - y1 + y2 - y3];
    const g = (sx * dy2 - sy * dx2) / (dx1 * dy2 - dy1 * dx2);
    const h = (dx1 * sy - dy1 * sx) / (dx1 * dy2 - dy1 * dx2);
    for (const [u, v] of [
      [0.3, 0.7],
      [0.5, 0.5],
      [0.9, 0.1],
    ] as const) {
      const w = g * u + h * v + 1;
      const pixel: Pixel = [
        ((x1 - x0 + g * x1) * u + (x3 - x0 + h * x3) * v + x0) / w,
        ((y1 - y0 + g * y1) * u + (y3 - y0 + h * y3) * v + y0) / w,
      ];
      const back = made.plane.toTruck(pixel)!;
      expect(back[0]).toBeCloseTo(-1000 * u, 5);
      expect(back[1]).toBeCloseTo(1000 * v, 5);
    }
  });

  it("taken square is placed by two points, either side of the truck", () => {
    for (const isFromLeft of [true, false]) {
      const shoot = ([ahead, up]: PlanePoint): Pixel => [
        900 + (isFromLeft ? -1 : 1) * 0.8 * ahead,
        1200 - 0.8 * up,
      ];
      const known = [CORNERS[0]!, CORNERS[2]!].map((at) => ({ pixel: shoot(at), at }));
      const made = photoPlane(known, isFromLeft);
      if (!made.ok) throw new Error(made.mend);
      for (const at of ARCH) {
        const back = made.plane.toTruck(shoot(at))!;
        expect(Math.hypot(back[0] - at[0], back[1] - at[1])).toBeLessThan(1e-9);
      }
      expect(made.plane.mmPerPixel).toBeCloseTo(1.25, 9);
    }
  });

  it("gives a traced arch its places, outboard by tape, straight between the readings and level beyond", () => {
    const shoot = camera([0.05, 0.25, 0.02], 2600);
    const made = photoPlane(
      CORNERS.map((at) => ({ pixel: shoot(at), at })),
      true,
    );
    if (!made.ok) throw new Error(made.mend);
    const offsets = [
      { ahead: 300, offset: 900 },
      { ahead: -310, offset: 880 },
      { ahead: 0, offset: 915 },
    ];
    const arch = archFromPhoto(made.plane, ARCH.map(shoot), offsets);
    if (!arch.ok) throw new Error(arch.mend);
    expect(arch.points.map(([, y]) => y)).toEqual([900, 900, 915, 880, 880].map((y) => expect.closeTo(y, 6)));
    arch.points.forEach(([x, , z], i) => {
      expect(Math.hypot(x - ARCH[i]![0], z - ARCH[i]![1])).toBeLessThan(1e-6);
    });
    expect(archFromPhoto(made.plane, [], offsets)).toMatchObject({ ok: false });
    expect(archFromPhoto(made.plane, ARCH.map(shoot), [])).toMatchObject({ ok: false });
    // Far to the side, past where the plane's own horizon stands in the picture.
    const ends: readonly Pixel[] = [
      [1e5, 1500],
      [-1e5, 1500],
    ];
    const beyond = archFromPhoto(made.plane, ends, offsets);
    expect(beyond).toMatchObject({ ok: false, mend: expect.stringContaining("trace the lip alone") });
  });

  it("with more points than four tells how far each is off", () => {
    const shoot = camera([0.1, -0.2, 0], 2400);
    const known = [...CORNERS, ...ARCH].map((at) => ({ pixel: shoot(at), at }));
    const slipped = known.map((one, i) =>
      i === 6 ? { ...one, at: [one.at[0] + 30, one.at[1]] as const } : one,
    );
    const made = photoPlane(slipped, true);
    if (!made.ok) throw new Error(made.mend);
    const { residuals } = made.plane;
    expect(residuals.indexOf(Math.max(...residuals))).toBe(6);
  });

  it("is refused with a mend: too few points, points in line, points that show no flat side", () => {
    const shoot = camera([0, 0.2, 0], 2600);
    const known = CORNERS.map((at): KnownPixel => ({ pixel: shoot(at), at }));
    const mendOf = (points: readonly KnownPixel[]) => {
      const made = photoPlane(points, true);
      return made.ok ? "" : made.mend;
    };
    expect(mendOf(known.slice(0, 1))).toContain("mark two points");
    expect(mendOf(known.slice(0, 3))).toContain("or four");
    expect(mendOf([known[0]!, known[0]!])).toContain("far apart");
    const line = [0, 1, 2, 3].map(
      (i): KnownPixel => ({ pixel: [100 * i, 200 * i], at: [300 * i, 100 * i * i] }),
    );
    expect(mendOf(line)).toContain("in line");
    const crossed = [
      known[0]!,
      { ...known[1]!, at: CORNERS[2]! },
      { ...known[2]!, at: CORNERS[1]! },
      known[3]!,
    ];
    expect(mendOf(crossed)).toContain("flat side");
    expect(mendOf([{ pixel: [Number.NaN, 0], at: [0, 0] }, known[1]!])).not.toBe("");
  });
});

describe("a scan on matched points", () => {
  const uniform = uniforms(4);
  const points = Array.from({ length: 6 }, (): Vec3 => [uniform() * 900, uniform() * 700, uniform() * 500]);
  const angles: Vec3 = [0.7, -0.4, 1.9];
  // Degrees about X, then Y, then Z, each about the vehicle's own axes, is three.js's order ZYX.
  const placing = new Matrix4().makeRotationFromEuler(new Euler(...angles, "ZYX")).setPosition(300, 900, 400);
  const onTruck = (p: Vec3): Vec3 => new Vector3(...p).applyMatrix4(placing).toArray() as unknown as Vec3;

  it("stands where three.js puts it, and its angles are those of the setup's place", () => {
    const made = scanOnPoints(points.map((inScan) => ({ inScan, onTruck: onTruck(inScan) })));
    if (!made.ok) throw new Error(made.mend);
    expect(Math.max(...made.placing.residuals)).toBeLessThan(1e-9);
    made.placing.turnDegrees.forEach((deg, i) => {
      expect((deg * Math.PI) / 180).toBeCloseTo(angles[i]!, 9);
    });
    made.placing.move.forEach((mm, i) => {
      expect(mm).toBeCloseTo([300, 900, 400][i]!, 8);
    });
  });

  it("tells its residuals: errors of one standard deviation come back as that, over many scans", () => {
    const normal = normals(8);
    let sum = 0;
    for (let i = 0; i < 200; i++) {
      const made = scanOnPoints(
        points.map((inScan) => ({
          inScan,
          onTruck: onTruck(inScan).map((v) => v + 2 * normal()) as unknown as Vec3,
        })),
      );
      if (!made.ok) throw new Error(made.mend);
      sum += made.placing.within! ** 2;
    }
    expect(Math.sqrt(sum / 200)).toBeCloseTo(2, 0);
  });

  it("never mirrors, and refuses points in line", () => {
    const flat = points.map(([x, y]): Vec3 => [x, y, 0]);
    const made = scanOnPoints(flat.map((inScan) => ({ inScan, onTruck: [inScan[0], -inScan[1], 0] })));
    if (!made.ok) throw new Error(made.mend);
    const [a, b, c] = made.placing.turn;
    expect(new Matrix4().set(...a, 0, ...b, 0, ...c, 0, 0, 0, 0, 1).determinant()).toBeCloseTo(1, 9);
    const line = [0, 1, 2, 3].map((i): Vec3 => [100 * i, 50 * i, 0]);
    expect(scanOnPoints(line.map((inScan) => ({ inScan, onTruck: inScan })))).toMatchObject({ ok: false });
    expect(scanOnPoints([])).toMatchObject({ ok: false });
  });
});

describe("tire by calipers, wheel by straightedge", () => {
  const rim = { rimDiameter: 381, rimWidth: 203.2 };
  const tire = { diameter: 710, sectionWidth: 240, treadWidth: 180, shoulderDrop: 9 };

  it("has its diameter at the crown, its section at the widest and its drop at the tread's edge", () => {
    const made = tireFromCalipers(tire, rim);
    if (!made.ok) throw new Error(made.mend);
    const { profile } = made;
    expect(Math.max(...profile.map(([, r]) => r))).toBeGreaterThanOrEqual(355 - 0.02);
    expect(Math.max(...profile.map(([, r]) => r))).toBeLessThan(355.1);
    expect(Math.max(...profile.map(([x]) => x))).toBeCloseTo(120, 6);
    expect(profile.some(([x, r]) => Math.abs(x - 90) < 1e-6 && Math.abs(r - 346) < 1e-6)).toBe(true);
    // Never inside the crown itself.
    for (const [x, r] of profile)
      if (Math.abs(x) < 90) expect(r).toBeGreaterThanOrEqual(355 - 9 * (x / 90) ** 2 - 1e-9);
    for (let i = 1; i < profile.length; i++)
      expect(profile[i]![0]).toBeGreaterThanOrEqual(-profile.at(-1)![0] - 20);
  });

  it("is flat without a drop, and refuses one that leaves no sidewall", () => {
    const flat = tireFromCalipers({ ...tire, shoulderDrop: 0 }, rim);
    if (!flat.ok) throw new Error(flat.mend);
    expect(Math.max(...flat.profile.map(([, r]) => r))).toBeCloseTo(355, 9);
    expect(tireFromCalipers({ ...tire, shoulderDrop: 200 }, rim)).toMatchObject({
      ok: false,
      key: "tire.shoulderDrop",
    });
    expect(tireFromCalipers({ ...tire, treadWidth: 300 }, rim)).toMatchObject({ ok: false });
  });

  it("takes an inch of flanges off lip to lip", () => {
    expect(wheelFromStraightedge(108, 228.6)).toEqual({ backspacing: 108, rimWidth: 203.2 });
    expect(wheelFromStraightedge(null, 10)).toEqual({ backspacing: null, rimWidth: null });
  });
});
