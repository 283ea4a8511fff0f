import { probeRing, ringProbe } from "../../gaps/ring/ringProbe.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import type { Numbers, Vec3 } from "../../geometry/vec.ts";

// Leaf scratch.
const probe = ringProbe();

/** The ring at one pose as seen from points about it; left-hand frame, mm. */
export interface RingSight {
  /** Signed distance from a point to the ring, negative inside. Exact. */
  distance(point: Vec3): number;
  /** The same, with the unit way in which it grows fastest: straight away from the nearest of the ring's surface. */
  look(point: Vec3): { readonly distance: number; readonly away: Vec3 };
}

/** @param wheel wheel center and outboard unit axis, six numbers at `at` */
export function ringSight(ring: RingShape, wheel: Float64Array, at: number): RingSight {
  const [cx, cy, cz, nx, ny, nz] = wheel.slice(at, at + 6) as unknown as Numbers<6>;
  /** Fills the probe; gives the part of the way from the center that is across the axis. */
  const see = ([px, py, pz]: Vec3): Vec3 => {
    const [dx, dy, dz] = [px - cx, py - cy, pz - cz];
    const x = dx * nx + dy * ny + dz * nz;
    const across: Vec3 = [dx - x * nx, dy - x * ny, dz - x * nz];
    probeRing(probe, ring, x, Math.sqrt(across[0] ** 2 + across[1] ** 2 + across[2] ** 2));
    return across;
  };
  return {
    distance(point) {
      see(point);
      return probe.distance;
    },
    look(point) {
      const across = see(point);
      const r = Math.sqrt(across[0] ** 2 + across[1] ** 2 + across[2] ** 2);
      const share = r > 0 ? probe.gradientR / r : 0;
      const { distance, gradientX } = probe;
      return {
        distance,
        away: [
          gradientX * nx + share * across[0],
          gradientX * ny + share * across[1],
          gradientX * nz + share * across[2],
        ],
      };
    },
  };
}
