import { cutShortSentence, setupHeading } from "../../studies/wording/answerWords.ts";
import { finestLength } from "../../studies/wording/lengths.ts";
import { degFromRad } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";

/** A column of a table: its header, and the side its cells are lined up on. */
export interface Column {
  readonly header: string;
  readonly align: "left" | "right";
}

/** A table in plain text, columns two spaces apart, a rule under the header. */
export function textTable(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const widths = columns.map(({ header }, i) =>
    Math.max(header.length, ...rows.map((row) => row[i]?.length ?? 0)),
  );
  const line = (cells: readonly string[]) =>
    columns
      .map(({ align }, i) =>
        align === "left" ? (cells[i] ?? "").padEnd(widths[i]!) : (cells[i] ?? "").padStart(widths[i]!),
      )
      .join("  ")
      .trimEnd();
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  return `${[line(columns.map((c) => c.header)), rule, ...rows.map(line)].join("\n")}\n`;
}

export { setupHeading as heading };

/** A length for a column whose header names the unit: `5 5/8`, `-3/16`. @param mm */
export function lengthCell(mm: number, format: LengthFormat): string {
  return formatLength(mm, format).replace(/ (?:in|mm)$/, "");
}

/** A gap, mm: as a length, but what is not nothing does not read 0: `<1/16`, and `rubs <1/16` for a light rub. */
export function gapCell(mm: number, format: LengthFormat): string {
  const finest = finestLength(format);
  if (mm === 0 || Math.abs(mm) >= 0.5 * finest) return lengthCell(mm, format);
  return `${mm < 0 ? "rubs " : ""}<${lengthCell(finest, format)}`;
}

/** A point: `-1 3/4, 36 1/16, 30 1/16`. @param point mm */
export function pointCell(point: readonly [number, number, number], format: LengthFormat): string {
  return point.map((value) => lengthCell(value, format)).join(", ");
}

/** An angle in degrees to 2 decimals, without the sign of a zero. @param rad */
export function degreesCell(rad: number): string {
  const text = degFromRad(rad).toFixed(2);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A steering input in percent of full lock: `-90%`, `0%`. */
export function steerCell(steer: number): string {
  return `${Math.round(100 * steer) + 0}%`;
}

/** Where a budget ended the study, the line that says so; else nothing. */
export function cutShortLine(
  study: Parameters<typeof cutShortSentence>[0],
  { cutShort }: { readonly cutShort?: true },
): string {
  return cutShort ? `${cutShortSentence(study, "Give it more with --budget SECONDS.")}\n` : "";
}
