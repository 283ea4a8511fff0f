import type { AirSpringSetup, MassesSetup } from "../../setup/types/airTypes.ts";
import { type AirMotion, airMotion } from "../../suspension/airMotion.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { GRAVITY } from "../../units/quantity.ts";
import type { Model } from "../model/model.ts";
import { airLoad, airPressureFor } from "./airCurve.ts";
import { airRate, airVolume } from "./airGas.ts";

/** Whether a value keeps its limits. */
export type Within = "within" | "below" | "above";

/** Where a load curve says nothing: below its heights or above them; at a height of it, of so small or so large a load. */
export type NoPressure = "lower" | "higher" | "less" | "more";

/** One side's spring carrying its corner at one travel. mm, N, MPa gauge. */
export interface AirState extends AirMotion {
  readonly side: Side;
  readonly heightWithin: Within;
  /** What the spring carries there; null without weights. */
  readonly load: number | null;
  /** What it takes to carry that; null without weights or curve, or where the curve holds no such pressure. */
  readonly pressure: number | null;
  /** null while there is no pressure. */
  readonly pressureWithin: Within | null;
  /** Why the curve holds no pressure there; null where it does, or where there are no weights or no curve. */
  readonly noPressure: NoPressure | null;
  /** Air closed in, mm³, and whether the setup gives a volume or it is an estimate. */
  readonly volume: number | null;
  readonly volumeIsEstimate: boolean;
  /** N/mm, air closed in. */
  readonly springRate: number | null;
  /** N/mm at the wheel center: springRate × motionRatio² + load × its change with travel. */
  readonly wheelRate: number | null;
  /** Hz, of the sprung corner on its wheel rate, the tire taken as rigid; null where the rate is not more than 0. */
  readonly frequency: number | null;
}

/** mm. Half of the stretch over which the motion ratio's own change is measured. */
const SLOPE_STEP = 0.05;

/** One side's spring at a travel, mm; null when the setup has no spring, or the wheel cannot stand there. */
export function airStateAt(model: Model, side: Side, travel: number): AirState | null {
  const { airSpring: spring, masses } = model.setup;
  if (spring === null) return null;
  const motion = motionOf(model, spring, side, travel);
  if (motion === null) return null;
  const load = masses === null ? null : springLoad(masses, side, motion);
  const carried = load === null ? Number.NaN : airPressureFor(spring, motion.height, load);
  const pressure = Number.isFinite(carried) ? carried : null;
  const rates = pressure === null ? null : ratesOf(model, spring, side, motion, load!, pressure);
  return {
    ...motion,
    side,
    heightWithin: within(motion.height, spring.leastHeight, spring.greatestHeight),
    load,
    pressure,
    pressureWithin:
      pressure === null ? null : within(pressure, spring.leastPressure, spring.greatestPressure),
    noPressure: load === null || pressure !== null ? null : whyNone(spring, motion.height, load),
    volume: pressure === null ? null : finite(airVolume(spring, motion.height, pressure)),
    volumeIsEstimate: spring.volume === null,
    springRate: rates?.springRate ?? null,
    wheelRate: rates?.wheelRate ?? null,
    frequency: rates?.frequency ?? null,
  };
}

function whyNone(spring: AirSpringSetup, height: number, load: number): NoPressure | null {
  const { curve } = spring;
  if (curve === null) return null;
  if (height < curve.heights[0]!) return "lower";
  if (height > curve.heights.at(-1)!) return "higher";
  // Areas hold every pressure; a chart begins at its first.
  const least = curve.kind === "area" ? 0 : airLoad(spring, height, curve.pressures[0]!);
  return load < least ? "less" : "more";
}

/** The spring's motion at a travel, or null out of reach. */
export function motionOf(model: Model, spring: AirSpringSetup, side: Side, travel: number): AirMotion | null {
  return airMotion(model.frontEnd[side], spring.bodyMount, spring.armMount, travel);
}

/** The scale reading of a side, kg. */
function cornerOf(masses: MassesSetup, side: Side): number {
  return side === "left" ? masses.corner : masses.cornerRight;
}

/**
 * The load the spring must carry, N, by virtual work: the ground lifts the contact patch, the unsprung weight rides with
 * the wheel center, the spring shortens by the motion ratio: ground × patchRatio − unsprung = load × motionRatio.
 */
export function springLoad(masses: MassesSetup, side: Side, { motionRatio, patchRatio }: AirMotion): number {
  const ground = cornerOf(masses, side) * GRAVITY;
  return (ground * patchRatio - masses.unsprung * GRAVITY) / motionRatio;
}

function ratesOf(
  model: Model,
  spring: AirSpringSetup,
  side: Side,
  motion: AirMotion,
  load: number,
  pressure: number,
) {
  const springRate = finite(airRate(spring, motion.height, pressure));
  const before = motionOf(model, spring, side, motion.travel - SLOPE_STEP);
  const after = motionOf(model, spring, side, motion.travel + SLOPE_STEP);
  if (springRate === null || before === null || after === null)
    return { springRate, wheelRate: null, frequency: null };
  const change = (after.motionRatio - before.motionRatio) / (2 * SLOPE_STEP);
  const wheelRate = springRate * motion.motionRatio ** 2 + load * change;
  const { masses } = model.setup;
  const sprung = masses === null ? 0 : cornerOf(masses, side) - masses.unsprung;
  // N/mm to N/m.
  const frequency =
    wheelRate > 0 && sprung > 0 ? Math.sqrt((1000 * wheelRate) / sprung) / (2 * Math.PI) : null;
  return { springRate, wheelRate, frequency };
}

export function within(value: number, least: number | null, most: number | null): Within {
  if (least !== null && value < least) return "below";
  return most !== null && value > most ? "above" : "within";
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
