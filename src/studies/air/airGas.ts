import type { AirSpringSetup } from "../../setup/types/airTypes.ts";
import { effective } from "./airCurve.ts";

/**
 * The air closed in at a height and gauge pressure, mm³. From the volume given at one height, by
 * dV/dh = effective area: at constant pressure the air does no work that the load does not (virtual work). Without a
 * volume: effective area × height, the spring as a cylinder, an estimate. NaN outside the curve.
 */
export function airVolume(spring: AirSpringSetup, height: number, pressure: number): number {
  const { volume } = spring;
  if (volume === null) return effective(spring, height, pressure).area * height;
  return volume.volume + areaIntegral(spring, volume.height, height, pressure);
}

/** ∫ effective area dh from one height to another: exact, the area is straight between the curve's heights. */
function areaIntegral(spring: AirSpringSetup, from: number, to: number, pressure: number): number {
  if (to < from) return -areaIntegral(spring, to, from, pressure);
  const inner = (spring.curve?.heights ?? []).filter((height) => height > from && height < to);
  const stops = [from, ...inner, to];
  let sum = 0;
  for (let i = 1; i < stops.length; i++) {
    const [a, b] = [stops[i - 1]!, stops[i]!];
    sum += 0.5 * (b - a) * (effective(spring, a, pressure).area + effective(spring, b, pressure).area);
  }
  return sum;
}

/**
 * How stiff the spring is with its air closed in, N/mm, + = shorter carries more: p·Vⁿ = constant in absolute pressure,
 * so dp/dh = −n·p·A/V, and −dF/dh = ∂F/∂p · n·p·A/V − ∂F/∂h. NaN outside the curve.
 */
export function airRate(spring: AirSpringSetup, height: number, pressure: number): number {
  const { area, perHeight, perPressure } = effective(spring, height, pressure);
  const absolute = pressure + spring.atmosphere;
  const volume = airVolume(spring, height, pressure);
  return (perPressure * spring.exponent * absolute * area) / volume - perHeight;
}

/**
 * Gauge pressure after the spring, closed at one height and pressure, has gone to another height. The volumes are those
 * at the first pressure. NaN outside the curve.
 */
export function closedPressure(
  spring: AirSpringSetup,
  height: number,
  pressure: number,
  toHeight: number,
): number {
  const before = airVolume(spring, height, pressure);
  const after = airVolume(spring, toHeight, pressure);
  return (pressure + spring.atmosphere) * (before / after) ** spring.exponent - spring.atmosphere;
}
