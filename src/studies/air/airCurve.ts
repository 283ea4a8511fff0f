import type { AirSpringSetup } from "../../setup/types/airTypes.ts";

/**
 * What an air spring carries, by its curve: N, mm, MPa gauge. NaN outside the curve: nothing is guessed past its ends.
 * A load table is read straight between its points in height and in pressure (bilinear); an area table gives
 * load = gauge pressure × effective area, the area straight between its heights, one row being constant.
 */
export function airLoad(spring: AirSpringSetup, height: number, pressure: number): number {
  return effective(spring, height, pressure).load;
}

/** The gauge pressure, MPa, at which the spring carries a load at a height. NaN where the curve holds none. */
export function airPressureFor(spring: AirSpringSetup, height: number, load: number): number {
  const { curve } = spring;
  if (curve === null) return Number.NaN;
  const row = placeIn(curve.heights, height);
  if (row === null) return Number.NaN;
  if (curve.kind === "area") return load / between(curve.areas, row);
  const { pressures, loads } = curve;
  // At one height the load rises straight from pressure to pressure.
  const at = (k: number) => between(columnOf(loads, pressures.length, k), row);
  if (load < at(0) || load > at(pressures.length - 1)) return Number.NaN;
  let k = 0;
  while (k + 2 < pressures.length && load > at(k + 1)) k++;
  const [low, high] = [at(k), at(k + 1)];
  return pressures[k]! + ((load - low) / (high - low)) * (pressures[k + 1]! - pressures[k]!);
}

/** Load with its slopes, and effective area = load ÷ gauge pressure. */
export interface AirLoad {
  readonly load: number;
  /** mm². NaN at no pressure in a load table. */
  readonly area: number;
  /** Change of load with height at constant pressure, N/mm. */
  readonly perHeight: number;
  /** Change of load with pressure at constant height, N/MPa. */
  readonly perPressure: number;
}

const OUTSIDE: AirLoad = {
  load: Number.NaN,
  area: Number.NaN,
  perHeight: Number.NaN,
  perPressure: Number.NaN,
};

/** The curve at a height and pressure. Where two straight pieces meet, slopes are those of the piece below. */
export function effective({ curve }: AirSpringSetup, height: number, pressure: number): AirLoad {
  if (curve === null) return OUTSIDE;
  const row = placeIn(curve.heights, height);
  if (row === null) return OUTSIDE;
  if (curve.kind === "area") {
    const area = between(curve.areas, row);
    return {
      load: pressure * area,
      area,
      perHeight: pressure * slope(curve.areas, row),
      perPressure: area,
    };
  }
  const column = placeIn(curve.pressures, pressure);
  if (column === null) return OUTSIDE;
  const columns = curve.pressures.length;
  const ends = [columnOf(curve.loads, columns, column.low), columnOf(curve.loads, columns, column.high)];
  const [low, high] = ends.map((loads) => between(loads, row)) as [number, number];
  const [lowSlope, highSlope] = ends.map((loads) => slope(loads, row)) as [number, number];
  const load = low + column.share * (high - low);
  return {
    load,
    area: load / pressure,
    perHeight: lowSlope + column.share * (highSlope - lowSlope),
    perPressure: column.step > 0 ? (high - low) / column.step : 0,
  };
}

/** Between which two entries a value lies, and how far along. */
interface Place {
  readonly low: number;
  readonly high: number;
  readonly share: number;
  /** Between the two entries; 0 = there is but one. */
  readonly step: number;
}

function placeIn(values: readonly number[], value: number): Place | null {
  if (values.length === 1) return { low: 0, high: 0, share: 0, step: 0 };
  const last = values.length - 1;
  if (!(value >= values[0]! && value <= values[last]!)) return null;
  let low = 0;
  while (low + 2 <= last && value > values[low + 1]!) low++;
  const step = values[low + 1]! - values[low]!;
  return { low, high: low + 1, share: (value - values[low]!) / step, step };
}

function between(values: readonly number[], { low, high, share }: Place): number {
  return values[low]! + share * (values[high]! - values[low]!);
}

function slope(values: readonly number[], { low, high, step }: Place): number {
  return step > 0 ? (values[high]! - values[low]!) / step : 0;
}

function columnOf(loads: readonly number[], columns: number, k: number): number[] {
  return loads.filter((_, i) => i % columns === k);
}
