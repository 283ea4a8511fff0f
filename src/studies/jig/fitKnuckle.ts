import type { Numbers } from "../../geometry/vec.ts";
import type { JigReadings, JigSetup, ReadingAccuracy, ReadingKey } from "../../setup/types/asBuiltTypes.ts";
import { type LeastSquares, leastSquares } from "../numeric/leastSquares.ts";
import { type BuiltKnuckle, jigReadingsOf, readKeys } from "./jigReadings.ts";

/** What is solved for. */
export const UNKNOWNS = [
  "span",
  "pinHeight",
  "pinLead",
  "pinAngle",
  "hubFace",
  "toe",
  "armX",
  "armY",
  "armZ",
] as const;

export type Unknown = (typeof UNKNOWNS)[number];

/** One reading beside what the knuckle found gives there. mm and radians. */
export interface Residual {
  readonly key: ReadingKey;
  readonly is: number;
  /** is − what the knuckle found gives. */
  readonly off: number;
  /** `off` over its own standard deviation; null = no other reading checks it. */
  readonly inSigmas: number | null;
  /** So far off, and the farthest: likely read or written wrong. */
  readonly isSuspect: boolean;
}

/** The knuckle that was really built, as far as its readings tell. mm and radians. */
export interface FittedKnuckle {
  /** What the readings leave open is as ordered. */
  readonly knuckle: BuiltKnuckle;
  /** One standard deviation; null = left open. */
  readonly within: Readonly<Record<Unknown, number | null>>;
  /** Rows and columns in the order of `UNKNOWNS`; 0 where left open. */
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly Residual[];
  /** Readings that would tell what is left open. */
  readonly missing: readonly ReadingKey[];
}

/** mm and rad: about how far a knuckle comes out of a jig. */
const LENGTH_SCALE = 1;
const ANGLE_SCALE = 0.01;

const SCALES = UNKNOWNS.map((name) => (name === "pinAngle" || name === "toe" ? ANGLE_SCALE : LENGTH_SCALE));

/** Readings that together tell everything, each unknown by as few as can be. */
const BASIC: readonly ReadingKey[] = [
  "front",
  "behind",
  "faceAngle",
  "faceHeight",
  "lead",
  "span",
  "armAhead",
  "armOut",
  "armUp",
];

/** Below it a residual is nothing but what rounding leaves of a reading that no other checks. */
const UNCHECKED = 1e-6;

/** Standardized residuals past this are outliers: 3 in a thousand sound readings are (Baarda 1968, from memory). */
const SUSPECT = 3;

/**
 * Weighted least squares from readings to the knuckle. Nine unknowns: readings fewer than that, or that tell the same
 * twice, leave some open; these stay as ordered and are named, the others are as good as their readings.
 * @param clampedAt mm up from the lower ball joint center, where the straightedge stood
 * @param start where to begin; default as ordered
 */
export function fitKnuckle(
  readings: JigReadings,
  clampedAt: number,
  jig: JigSetup,
  within: ReadingAccuracy,
  ordered: BuiltKnuckle,
  start: BuiltKnuckle = ordered,
): FittedKnuckle {
  const keys = readKeys(readings);
  const fit = fitOf(keys, (key) => readings[key]!, clampedAt, jig, within, start);
  const from = valuesOf(ordered);
  const { isOpen, covariance } = fit;
  const knuckle = knuckleOf(fit.at.map((value, i) => (isOpen[i] ? from[i]! : value)));
  return {
    knuckle,
    within: Object.fromEntries(
      UNKNOWNS.map((name, i) => [name, isOpen[i] ? null : Math.sqrt(covariance[i]![i]!)]),
    ) as FittedKnuckle["within"],
    covariance,
    residuals: residualsOf(fit, keys, readings, within),
    missing: missingOf(keys, rankOf(fit), clampedAt, jig, within, ordered),
  };
}

/** One standard deviation of a reading. */
export function sigmaOf(key: ReadingKey, within: ReadingAccuracy): number {
  switch (key) {
    case "faceAngle":
      return within.angle;
    case "front":
    case "behind":
    case "span":
    case "lowerToArm":
    case "upperToArm":
      return within.tape;
    default:
      return within.height;
  }
}

function fitOf(
  keys: readonly ReadingKey[],
  is: (key: ReadingKey) => number,
  clampedAt: number,
  jig: JigSetup,
  within: ReadingAccuracy,
  start: BuiltKnuckle,
): LeastSquares {
  return leastSquares({
    residuals: (at) => {
      const reads = jigReadingsOf(knuckleOf(at), jig, clampedAt);
      return keys.map((key) => (reads[key] - is(key)) / sigmaOf(key, within));
    },
    start: valuesOf(start),
    scales: SCALES,
  });
}

function residualsOf(
  { residuals, redundancy }: LeastSquares,
  keys: readonly ReadingKey[],
  readings: JigReadings,
  within: ReadingAccuracy,
): readonly Residual[] {
  const inSigmas = residuals.map((residual, i) =>
    redundancy[i]! > UNCHECKED ? -residual / Math.sqrt(redundancy[i]!) : null,
  );
  const most = Math.max(...inSigmas.map((value) => Math.abs(value ?? 0)));
  return keys.map((key, i) => ({
    key,
    is: readings[key]!,
    off: -residuals[i]! * sigmaOf(key, within),
    inSigmas: inSigmas[i]!,
    isSuspect: most > SUSPECT && Math.abs(inSigmas[i] ?? 0) > most * (1 - 1e-6),
  }));
}

/** The fewest basic readings, in their order, that would leave nothing open. @param rankSoFar of the readings there are */
function missingOf(
  keys: readonly ReadingKey[],
  rankSoFar: number,
  clampedAt: number,
  jig: JigSetup,
  within: ReadingAccuracy,
  ordered: BuiltKnuckle,
): readonly ReadingKey[] {
  const asOrdered = jigReadingsOf(ordered, jig, clampedAt);
  const told = (read: readonly ReadingKey[]) =>
    rankOf(fitOf(read, (key) => asOrdered[key], clampedAt, jig, within, ordered));
  let [read, rank] = [keys, rankSoFar];
  const missing: ReadingKey[] = [];
  for (const key of BASIC) {
    if (rank === UNKNOWNS.length) break;
    if (read.includes(key)) continue;
    const more = [...read, key];
    const rankWith = told(more);
    if (rankWith === rank) continue;
    missing.push(key);
    [read, rank] = [more, rankWith];
  }
  return missing;
}

/** How many things readings tell: each reading counts for what the others do not. */
function rankOf({ redundancy }: LeastSquares): number {
  return Math.round(redundancy.reduce((sum, share) => sum + (1 - share), 0));
}

/** A knuckle's numbers in the order of `UNKNOWNS`. */
export function valuesOf({
  span,
  pinHeight,
  pinLead,
  pinAngle,
  hubFace,
  toe,
  steeringArm,
}: BuiltKnuckle): number[] {
  return [span, pinHeight, pinLead, pinAngle, hubFace, toe, ...steeringArm];
}

/** The knuckle of numbers in the order of `UNKNOWNS`. */
export function knuckleOf(values: readonly number[]): BuiltKnuckle {
  const [span, pinHeight, pinLead, pinAngle, hubFace, toe, x, y, z] = values as Numbers<9>;
  return { span, pinHeight, pinLead, pinAngle, hubFace, toe, steeringArm: [x, y, z] };
}
