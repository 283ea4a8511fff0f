import type { Doubt } from "../../studies/doubts/doubt.ts";
import type { AsBuiltReport, AsBuiltSide } from "../../studies/jig/asBuiltReport.ts";
import type { AsBuiltTruck } from "../../studies/jig/asBuiltTruck.ts";
import { type JigSheet, jigSheetOf } from "../../studies/jig/jigSheet.ts";
import type { Model } from "../../studies/model/model.ts";
import {
  gapSentences,
  mendSentences,
  TRUCK_COLUMNS,
  trackSentence,
  truckCells,
  truckRows,
  truckWithinSentences,
} from "../../studies/wording/asBuiltTruckWords.ts";
import {
  BUILT_COLUMNS,
  builtCells,
  builtRows,
  JIG_CAUTIONS,
  passOffText,
  passWord,
  sideSentences,
  unreadSentence,
} from "../../studies/wording/asBuiltWords.ts";
import { correctionSentences } from "../../studies/wording/correctionWords.ts";
import {
  JIG_COLUMNS,
  jigCells,
  jigFileSentence,
  jigFormat,
  jigReadText,
  jigSetupSentences,
  readingWords,
} from "../../studies/wording/jigWords.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { jigTitle, paperHead, paperLines } from "../../studies/wording/paperHead.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { type Column, cutShortLine, heading, textTable } from "./textTable.ts";

const SIDES = ["left", "right"] as const;

/** The jig sheet as a person reads it, with a column to write into. */
export function jigTable(sheet: JigSheet, { setup }: Model): string {
  const format = jigFormat(formatOf(setup));
  const head = paperHead(setup);
  const rows = sheet.rows.map((row) => {
    const { name, how } = readingWords(row.key, sheet, format);
    return [name, ...jigCells(row, format), "________", "________", how];
  });
  const table = textTable(columns("Reading", [...JIG_COLUMNS, "Left", "Right"], "How"), rows);
  const words = jigSetupSentences(sheet, format)
    .map((sentence) => `${sentence}\n`)
    .join("");
  const said = line(jigFileSentence(sheet));
  const over = [jigTitle(head.part), ...paperLines(head)].join("\n");
  return [`${over}\n${words}`, `${table}${said}`, JIG_CAUTIONS].join("\n");
}

/**
 * An as-built check as a person reads it: each knuckle, then what both do on the truck.
 * @param model as ordered; @param built the same truck on the knuckles as built
 */
export function asBuiltTable(
  report: AsBuiltReport,
  model: Model,
  built: Model,
  doubts: readonly Doubt[],
): string {
  const { setup } = model;
  const sheet = jigSheetOf(setup);
  const format = jigFormat(formatOf(setup));
  const { sides, onTheTruck } = report;
  const read = SIDES.flatMap((side) => sides[side] ?? []);
  const told = [
    ...read.flatMap((side) => sideSentences(side, sheet, format)),
    ...correctionSentences(read, sheet, format),
  ];
  const blocks = [
    `${heading(setup)}: as built\n${told.join("\n")}\n${line(unreadSentence(sides))}${cutShortLine("check", report)}`,
    ...read.map((side) => sideTables(side, sheet, format)),
    ...(onTheTruck.ok ? [truckTables(onTheTruck, read, sheet, { model, built, doubts }, format)] : []),
    JIG_CAUTIONS,
  ];
  return blocks.join("\n");
}

const line = (sentence: string) => (sentence === "" ? "" : `${sentence}\n`);

function sideTables({ side, passes, fit }: AsBuiltSide, sheet: JigSheet, format: LengthFormat): string {
  const title = side === "left" ? "Left" : "Right";
  const sigmas = new Map(fit.residuals.map((one) => [one.key as string, one]));
  const readings = passes.map((row) => {
    const { key, is, passes: passed } = row;
    const residual = sigmas.get(key);
    const inSigmas = residual?.inSigmas ?? null;
    return [
      readingWords(key, sheet, format).name,
      ...jigCells(row, format),
      jigReadText(row, is, format),
      passOffText(row, format),
      passWord(passed),
      key === "difference"
        ? ""
        : inSigmas === null
          ? "unchecked"
          : (Math.round(inSigmas * 10) / 10 + 0).toFixed(1),
      residual?.isSuspect ? "read again" : "",
    ];
  });
  const built = builtRows(fit, sheet.knuckle).map((row) => [row.name, ...builtCells(row, format)]);
  return [
    textTable(
      columns(
        `${title}: reading`,
        [...JIG_COLUMNS, "Read", "Off", "", "In standard deviations off the others"],
        "",
      ),
      readings,
    ),
    textTable(columns(`${title}: knuckle`, BUILT_COLUMNS), built),
  ].join("\n");
}

function truckTables(
  truck: AsBuiltTruck,
  read: readonly AsBuiltSide[],
  sheet: JigSheet,
  {
    model,
    built,
    doubts,
  }: { readonly model: Model; readonly built: Model; readonly doubts: readonly Doubt[] },
  format: LengthFormat,
): string {
  const tables = read.map(({ side }) =>
    textTable(
      columns(`${side === "left" ? "Left" : "Right"}: on the truck`, TRUCK_COLUMNS),
      truckRows(truck, side).map((row) => [
        row.note === undefined ? row.name : `${row.name} (${row.note})`,
        ...truckCells(row, format),
      ]),
    ),
  );
  const sentences = [
    trackSentence(truck, format),
    ...gapSentences(truck, { ordered: model, built }, doubts, formatOf(model.setup)),
    ...truckWithinSentences(truck, read, format),
    ...mendSentences(read, truck, sheet.knuckle, model, format),
  ];
  return [...tables, `${sentences.join("\n")}\n`].join("\n");
}

function columns(first: string, others: readonly string[], last?: string): Column[] {
  return [
    { header: first, align: "left" },
    ...others.map((header): Column => ({ header, align: "right" })),
    ...(last === undefined ? [] : [{ header: last, align: "left" } as const]),
  ];
}
