import type { Result, Setup } from "../../../setup/types/types.ts";
import type { AxisAsk } from "../../../studies/chart/chartTypes.ts";
import { type AxisSubject, readAxis, readAxisTable } from "../../../studies/chart/readAxis.ts";
import { windowField } from "../../../studies/window/windowField.ts";
import { degFromRad } from "../../../units/angle.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";

/** What is typed of an axis. */
export interface AxisTyped {
  readonly key: string;
  /** Values as typed; null = not typed yet, so that some about the truck's own are shown. */
  readonly text: string | null;
  /** A list that was given as a file; it goes before the text. */
  readonly table: { readonly name: string; readonly text: string } | null;
}

/** Fields a chart is mostly asked about. */
export const CHART_FIELDS: readonly string[] = [
  "wheel.backspacing",
  "tire.size",
  "tire.sectionWidth",
  "tire.diameter",
  "knuckle.hubFace",
  "knuckle.pinHeight",
  "knuckle.pinAngle",
  "tire",
  "wheel",
];

/** mm and degrees either way of the truck's own value, and between two, where nothing is typed. */
const SPREAD = {
  in: { reach: 25.4, step: 6.35 },
  mm: { reach: 25, step: 5 },
  deg: { reach: 2, step: 0.5 },
} as const;

/** The values an axis begins with: some about the truck's own. */
export function startText(key: string, { document, setup, file }: AxisSubject): string {
  if (key === "tire.size" || key === "tire") return setup.tire.kind === "size" ? setup.tire.size : "";
  const found = windowField(document, setup, key, file);
  if (!found.ok) return "";
  const { kind, now } = found.value;
  if (kind === "angle") {
    const { reach, step } = SPREAD.deg;
    const own = degFromRad(now);
    return [own - reach, own + reach, step].map((value) => String(Number(value.toFixed(3)))).join(":");
  }
  const { reach, step } = SPREAD[setup.units];
  return [Math.max(now - reach, step), now + reach, step].map((mm) => lengthText(mm, setup)).join(":");
}

function lengthText(mm: number, { units }: Setup): string {
  return plainLengthText(mm, units, units);
}

export function readTypedAxis({ key, text, table }: AxisTyped, subject: AxisSubject): Result<AxisAsk> {
  if (table !== null) return readAxisTable(key, table.text, subject);
  return readAxis(key, text ?? startText(key, subject), subject);
}

const KEPT = "wellsweep chart axes";

const START: readonly [AxisTyped, AxisTyped] = [
  { key: "wheel.backspacing", text: null, table: null },
  { key: "knuckle.hubFace", text: null, table: null },
];

/** The axes as they were typed last; a browser may keep nothing for a page. */
export function keptAxes(): readonly [AxisTyped, AxisTyped] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    if (!Array.isArray(kept) || kept.length !== 2 || !kept.every(isTyped)) return START;
    return kept as unknown as readonly [AxisTyped, AxisTyped];
  } catch {
    return START;
  }
}

export function keepAxes(axes: readonly [AxisTyped, AxisTyped]): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(axes));
  } catch {
    // Then the next visit begins as the first.
  }
}

function isTyped(axis: unknown): boolean {
  const { key, text, table } = (axis ?? {}) as Partial<AxisTyped>;
  const isText = (value: unknown) => value === null || typeof value === "string";
  return (
    typeof key === "string" &&
    CHART_FIELDS.includes(key) &&
    isText(text) &&
    (table === null || (typeof table?.name === "string" && typeof table.text === "string"))
  );
}
