import { parseKeyText } from "../../setup/types/keyPath.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { mmFromUnits } from "../../units/lengthUnits.ts";
import type { CellDocument, ChartDocument } from "../chart/chartDocument.ts";
import { fieldName } from "./fieldName.ts";
import { amountText, lengthText } from "./lengths.ts";
import { inputWords, travelText } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";
import { truckName } from "./truckName.ts";

/** What a cell of a chart is shown as. */
export type CellSort = "clear" | "close" | "rubs" | "issue" | "unfinished";

/** The sign of each, so that no cell is told by its color alone. */
export const CELL_MARKS: Readonly<Record<CellSort, string>> = {
  clear: "✓",
  close: "~",
  rubs: "×",
  issue: "–",
  unfinished: "?",
};

/** The same for a terminal that may know no other letters. */
const PLAIN_MARKS: Readonly<Record<CellSort, string>> = { ...CELL_MARKS, clear: "+", rubs: "x", issue: "-" };

export function cellSort(cell: CellDocument): CellSort {
  if ("issue" in cell) return "issue";
  return "unfinished" in cell ? "unfinished" : cell.verdict;
}

/** What an axis is called: `Backspacing`, `Tire`. @param document the setup as typed, the variant shown applied */
export function axisName(key: string, document: unknown): string {
  return fieldName(parseKeyText(key) ?? [], document);
}

/** A cell on a printed table: its mark, and how much: `+ 3/8`, `x 1/4`. */
export function plainCell(cell: CellDocument, format: LengthFormat): string {
  const mark = PLAIN_MARKS[cellSort(cell)];
  const amount = cellAmount(cell, format);
  return amount === "" ? mark : `${mark} ${amount.replace(/ (?:in|mm)$/, "")}`;
}

/** How near it comes, on the safe side: what is proven to be left, or how deep a rub was found. */
export function cellAmount(cell: CellDocument, format: LengthFormat): string {
  if (!("verdict" in cell) || cell.gap === null) return "";
  const { units } = format;
  if (cell.verdict === "rubs") return amountText(mmFromUnits(cell.gap, units), format, true);
  const left = mmFromUnits(cell.bound ?? cell.gap, units);
  const safe = safeLength(Math.max(left, 0), "down", format);
  return safe === 0 ? amountText(0, format, true) : lengthText(safe, format);
}

/** What a cell says, in one sentence. */
export function cellSentence(
  chart: ChartDocument,
  column: number,
  row: number,
  format: LengthFormat,
): string {
  const cell = chart.cells[row]![column]!;
  const { x, y } = chart;
  const which = `${x.name} ${x.labels[column]!}, ${y.name.toLowerCase()} ${y.labels[row]!}`;
  if ("issue" in cell) return `${which}: does not go together (${cell.issue}).`;
  if ("unfinished" in cell) return `${which}: not finished.`;
  if (cell.part === null) return `${which}: nothing is measured.`;
  const amount = cellAmount(cell, format);
  const part = `${cell.side} ${cell.part}`;
  const where =
    cell.ride === "together"
      ? "at every pose"
      : `${travelText(mmFromUnits(cell.travel ?? 0, chart.units), format)}, ${inputWords(cell.steer ?? 0)}`;
  switch (cell.verdict) {
    case "rubs":
      return `${which}: rubs by ${amount} or more, ${part}, ${where}.`;
    case "close":
      return `${which}: close, ${amount} is left, ${part}, ${where}.`;
    case "clear":
      return `${which}: clears by ${amount}, nearest the ${part}, ${where}.`;
  }
}

/** How many do what, and what the truck as it stands does. */
export function chartSentences(chart: ChartDocument, format: LengthFormat): readonly string[] {
  const all = chart.cells.flat();
  const count = (sort: CellSort) => all.filter((cell) => cellSort(cell) === sort).length;
  const words: Readonly<Record<CellSort, string>> = {
    clear: "clear",
    close: "are close",
    rubs: "rub",
    issue: "do not go together",
    unfinished: "are not finished",
  };
  const told = (Object.keys(words) as CellSort[]).flatMap((sort) => {
    const many = count(sort);
    return many === 0 ? [] : [`${many} ${many === 1 ? singular(words[sort]) : words[sort]}`];
  });
  return [
    `Of ${all.length} combinations ${listed(told)}.`,
    presentSentence(chart, format),
    ...issueSentences(chart),
  ];
}

/** Reasons told: of a long list one slip is mended at a time. */
const MOST_REASONS = 3;

/** Why some do not go together, each reason once, with the first it is about. */
function issueSentences({ cells, x, y }: ChartDocument): readonly string[] {
  const first = new Map<string, string>();
  for (const [j, row] of cells.entries())
    for (const [i, cell] of row.entries())
      if ("issue" in cell && !first.has(cell.issue))
        first.set(cell.issue, `${x.labels[i]!}, ${y.labels[j]!}`);
  return [...first]
    .slice(0, MOST_REASONS)
    .map(([issue, which]) => `${which} does not go together: ${issue}.`);
}

function presentSentence({ present, cells, x, y }: ChartDocument, format: LengthFormat): string {
  if (present === null) return `The ${truckName(null)} is not on this chart.`;
  const { column, row } = present;
  const cell = cells[row]![column]!;
  const amount = cellAmount(cell, format);
  const now = `The ${truckName(null)} (${x.labels[column]!}, ${y.labels[row]!})`;
  switch (cellSort(cell)) {
    case "rubs":
      return `${now} rubs by ${amount} or more.`;
    case "close":
      return `${now} is close: ${amount} is left.`;
    case "clear":
      return amount === "" ? `On the ${truckName(null)} nothing is measured.` : `${now} clears by ${amount}.`;
    case "issue":
      return `${now} does not go together.`;
    case "unfinished":
      return `${now} is not finished.`;
  }
}

/** What the marks mean. @param isPlain as on a terminal */
export function legendSentence(
  { allowance, units }: ChartDocument,
  format: LengthFormat,
  isPlain = false,
): string {
  const marks = isPlain ? PLAIN_MARKS : CELL_MARKS;
  const least = lengthText(mmFromUnits(allowance, units), format);
  return `${marks.clear} clears, with at least this much left; ${marks.close} close: less than ${least} is left; ${marks.rubs} rubs by this much or more; ${marks.issue} does not go together; ${marks.unfinished} not finished.`;
}

/** Over a chart on paper: what it is, in which unit, from when; then whose. @param date as a person writes it */
export function chartTitle({ of, x, y, units }: ChartDocument, date: string): string {
  const unit = units === "in" ? "inches" : "millimeters";
  return `Fit chart: ${y.name.toLowerCase()} against ${x.name.toLowerCase()}, lengths in ${unit}\n${of} · ${date}`;
}

/** Which poses it is about. */
export function posesSentence({ travel, lock, units }: ChartDocument, format: LengthFormat): string {
  const height = (value: number) => travelText(mmFromUnits(value, units), format);
  const heights =
    travel.from === travel.to
      ? `At ${height(travel.from)}`
      : `From ${height(travel.from)} to ${height(travel.to)}`;
  const steer = lock === 1 ? "lock to lock" : `up to ${Math.round(100 * lock)}% of either lock`;
  return `${heights}, ${steer}: proven at every pose between.`;
}

function singular(words: string): string {
  const one: Readonly<Record<string, string>> = { clear: "clears", rub: "rubs" };
  return one[words] ?? words.replace(/^are /, "is ").replace(/^do /, "does ");
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** Of a chart with more combinations than a page works out. */
export function tooManyCells(count: number, most: number): string {
  const text = (number: number) => number.toLocaleString("en-US");
  return `These make ${text(count)} combinations, and the page works out ${text(most)} at most; give fewer values, or run the chart in pieces on the command line.`;
}
