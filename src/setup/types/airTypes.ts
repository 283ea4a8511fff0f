/** A point or direction; written out here because `types.ts` reads this file. */
type Point = readonly [x: number, y: number, z: number];

/** Load by height and pressure: `loads[row × pressures + column]`, N; heights mm and pressures MPa both rising. */
export interface LoadTable {
  readonly kind: "loads";
  readonly heights: readonly number[];
  readonly pressures: readonly number[];
  readonly loads: readonly number[];
}

/** Effective area by height, mm² and mm, heights rising; one row = constant. */
export interface AreaTable {
  readonly kind: "area";
  readonly heights: readonly number[];
  readonly areas: readonly number[];
}

export type AirCurve = LoadTable | AreaTable;

/** The air closed in at a height, mm³ and mm, with whatever reservoir stays open to the spring. */
export interface AirVolume {
  readonly height: number;
  readonly volume: number;
}

/** An air spring between the body and the lower arm. Height = distance between its mounts, mm. Pressures are gauge, MPa. */
export interface AirSpringSetup {
  /** Left side, vehicle axes, as measured. */
  readonly bodyMount: Point;
  readonly armMount: Point;
  /** null = not checked. */
  readonly leastHeight: number | null;
  readonly greatestHeight: number | null;
  readonly leastPressure: number | null;
  readonly greatestPressure: number | null;
  /** mm, at its widest; null = not measured as a moving part. */
  readonly diameter: number | null;
  /** null = no answers about load and pressure. */
  readonly curve: AirCurve | null;
  /** null = estimated from effective area × height. */
  readonly volume: AirVolume | null;
  /** n of p·Vⁿ = constant, absolute pressure. */
  readonly exponent: number;
  /** Absolute, MPa. */
  readonly atmosphere: number;
}

/** Weights, kg: what a scale under each front wheel shows, and what of it does not ride on the spring. */
export interface MassesSetup {
  readonly corner: number;
  readonly cornerRight: number;
  readonly unsprung: number;
}
