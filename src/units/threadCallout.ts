import { MM_PER_INCH, mmFromInches } from "./lengthUnits.ts";
import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";
import { plainLengthText } from "./plainLengthText.ts";
import { METRIC_COARSE, NUMBERED_SIZES, numberedDiameter, UNIFIED_SERIES } from "./threadSeries.ts";

/** A screw thread by its standard designation: Unified inch (ASME B1.1) or metric (ISO 965-1). */
export interface ThreadCallout {
  readonly kind: "unified" | "metric";
  /** Nominal diameter, mm. */
  readonly diameter: number;
  /** mm. */
  readonly pitch: number;
  /** The number of a numbered Unified size; null = none. */
  readonly number: number | null;
  /** `UNC`, `UNF`, `UNEF` of the standard series, as written or by its pitch; null = none of them, or metric. */
  readonly series: "UNC" | "UNF" | "UNEF" | null;
  /** Class or tolerance as written: `2A`, `6H`; null = none. */
  readonly fit: string | null;
  readonly hand: "right" | "left";
}

/** A thread, or what is wrong with the text and what would be right (no full stop). */
export type ParsedThread =
  | { readonly ok: true; readonly thread: ThreadCallout }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = "write a thread such as 5/8-18, 3/4-16 UNF LH or M16x1.5";

const HAND = String.raw`(?: ?-? ?(?<hand>LH|RH|L\.H\.|R\.H\.|LEFT|RIGHT)(?: HAND)?)?`;
const UNIFIED = new RegExp(
  String.raw`^(?<mark># ?|NO\.? ?)?(?<size>\d+[ -]\d+ ?/ ?\d+|\d+ ?/ ?\d+|\d*\.?\d+)(?:"| ?IN\.?)? ?[-X] ?(?<tpi>\d+(?:\.5)?)(?: ?TPI)?(?: ?-? ?(?<series>UN(?:C|F|EF|S|RC|RF|REF|RS|R)?))?(?: ?-? ?(?<fit>[123][AB]))?${HAND}$`,
);
const METRIC = new RegExp(
  String.raw`^M ?(?<size>\d+(?:\.\d+)?)(?: ?[X*-] ?(?<pitch>\d*\.?\d+))?(?: ?MM)?(?: ?-? ?(?<fit>\d[EFGH](?:\d[EFGH])?))?${HAND}$`,
);

/** Reads a thread by its standard designation; a metric one without a pitch is coarse (ISO 261). Never throws. */
export function parseThread(text: string): ParsedThread {
  const readable = readableText(text.replaceAll("×", "x"), EXAMPLE);
  if (!readable.ok) return readable;
  const plain = readable.text.toUpperCase();
  const metric = METRIC.exec(plain)?.groups;
  if (metric) return metricThread(metric);
  const unified = UNIFIED.exec(plain)?.groups;
  return unified ? unifiedThread(unified) : refuse(EXAMPLE);
}

type Groups = Readonly<Record<string, string | undefined>>;

function handOf(groups: Groups): ThreadCallout["hand"] {
  return groups.hand?.startsWith("L") ? "left" : "right";
}

function metricThread(groups: Groups): ParsedThread {
  const diameter = Number(groups.size);
  const pitch = groups.pitch === undefined ? METRIC_COARSE.get(diameter) : Number(groups.pitch);
  if (pitch === undefined)
    return refuse(`M${diameter} has no coarse pitch that is known here; write it, such as M${diameter}x1.5`);
  const fit = groups.fit ?? null;
  return sound({ kind: "metric", diameter, pitch, number: null, series: null, fit, hand: handOf(groups) });
}

function unifiedThread(groups: Groups): ParsedThread {
  const read = readMeasureNumber(groups.size!, 0);
  if (!read.ok) return refuse(`${read.mend}; ${EXAMPLE}`);
  const tpi = Number(groups.tpi);
  const isNumber = groups.mark !== undefined || (NUMBERED_SIZES.get(read.value)?.includes(tpi) ?? false);
  if (isNumber && !NUMBERED_SIZES.has(read.value))
    return refuse(`there is no size number ${read.value}; ${EXAMPLE}`);
  const inches = isNumber ? numberedDiameter(read.value) : read.value;
  if (!(tpi > 0)) return refuse(`must have threads on an inch; ${EXAMPLE}`);
  const named = (["UNC", "UNF", "UNEF"] as const).find(
    (name) => name === groups.series?.replace("UNR", "UN"),
  );
  const known = (["UNC", "UNF", "UNEF"] as const).find((name) => UNIFIED_SERIES[name].get(inches) === tpi);
  const expected = named && UNIFIED_SERIES[named].get(inches);
  if (expected !== undefined && expected !== tpi)
    return refuse(`${named} of this size has ${expected} threads an inch, not ${tpi}; check which is meant`);
  return sound({
    kind: "unified",
    diameter: mmFromInches(inches),
    pitch: MM_PER_INCH / tpi,
    number: isNumber ? read.value : null,
    series: named ?? known ?? null,
    fit: groups.fit ?? null,
    hand: handOf(groups),
  });
}

/** Refuses what no thread can be: one whose grooves leave next to no core, or larger than a truck has. */
function sound(thread: ThreadCallout): ParsedThread {
  const { diameter, pitch } = thread;
  if (!(diameter >= 1 && diameter <= 160))
    return refuse("is no size of a thread on a truck; check the number");
  return pitch > 0.1 && diameter > 2.5 * pitch
    ? { ok: true, thread }
    : refuse("its pitch does not go with its diameter; check the numbers");
}

/** Threads on an inch, of a Unified thread. */
function threadsPerInch({ pitch }: ThreadCallout): number {
  return Number((MM_PER_INCH / pitch).toFixed(6));
}

/** The thread as it is written on an order: `5/8-18 UNF`, `#10-32`, `M16x1.5 LH`. `parseThread` gives it back. */
export function threadText(thread: ThreadCallout): string {
  const { kind, diameter, pitch, number, series, fit, hand } = thread;
  const size = number !== null ? `#${number}` : plainLengthText(diameter, "in", "in");
  const base =
    kind === "metric"
      ? `M${diameter}x${pitch}`
      : `${size}-${threadsPerInch(thread)}${series === null ? "" : ` ${series}`}`;
  return `${base}${fit === null ? "" : `-${fit}`}${hand === "left" ? " LH" : ""}`;
}

/** Whether one screws into the other: diameter, pitch and hand alike. */
export function isSameThread(a: ThreadCallout, b: ThreadCallout): boolean {
  return a.hand === b.hand && Math.abs(a.diameter - b.diameter) < 1e-6 && Math.abs(a.pitch - b.pitch) < 1e-6;
}

/** Basic pitch diameter, mm: D − 0.649519 P (ASME B1.1 and ISO 724: three eighths of the sharp V on either side). */
export function pitchDiameter({ diameter, pitch }: ThreadCallout): number {
  return diameter - 0.75 * Math.sqrt(0.75) * pitch;
}

/** Basic minor diameter of the nut, mm: D − 1.082532 P (ASME B1.1 and ISO 724). */
export function minorDiameter({ diameter, pitch }: ThreadCallout): number {
  return diameter - 1.25 * Math.sqrt(0.75) * pitch;
}

/**
 * Tensile stress area, mm²: π/4 (D − 0.9743 P)² for Unified threads (ASME B1.1), π/4 (D − 0.9382 P)² for metric ones
 * (ISO 898-1, which takes the mean of pitch diameter and root).
 */
export function stressArea({ kind, diameter, pitch }: ThreadCallout): number {
  return (Math.PI / 4) * (diameter - (kind === "unified" ? 0.9743 : 0.938194) * pitch) ** 2;
}

/** Share of the full thread height that taps are commonly drilled for (common practice, no source). */
const DRILLED_SHARE = 0.75;

/**
 * Diameter to drill before tapping, mm, for three quarters of the full thread: D − 1.299038 P × share (the usual formula,
 * Machinery's Handbook, from memory). The drill taken is the nearest on the shelf.
 */
export function tapDrill({ diameter, pitch }: ThreadCallout, share = DRILLED_SHARE): number {
  return diameter - 1.5 * Math.sqrt(0.75) * pitch * share;
}

function refuse(mend: string): { readonly ok: false; readonly mend: string } {
  return { ok: false, mend };
}
