import type { FloorReport, FloorStance } from "../../studies/floor/floorReport.ts";
import type { RollCoverage } from "../../studies/floor/rollCoverage.ts";
import type { Model } from "../../studies/model/model.ts";
import { FLOOR_CAUTIONS } from "../../studies/wording/cautions.ts";
import { clearanceTold, floorSentences } from "../../studies/wording/floorWords.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { askedWords, rollSentences } from "../../studies/wording/rollWords.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { type Column, degreesCell, heading, lengthCell, textTable } from "./textTable.ts";

/** The stances on the floor as a person reads them: what is below or drags first, then measures, clearances, roll. */
export function floorTable(report: FloorReport, model: Model): string {
  const { setup } = model;
  const format = formatOf(setup);
  const { roll, stances } = report;
  return [
    `${heading(setup)}\n${lines(floorSentences(report, model, format))}`,
    `Each stance by what a shop measures, left side:\n${measuresTable(stances, format)}`,
    clearanceTable(stances, format),
    roll === null ? "" : `${lines(rollSentences(roll, format))}\n${rollTable(roll, format)}`,
    howWorked(model),
    FLOOR_CAUTIONS,
  ]
    .filter((block) => block !== "")
    .join("\n");
}

const lines = (sentences: readonly string[]) => sentences.map((line) => `${line}\n`).join("");

const right = (headers: readonly string[]): Column[] => headers.map((header) => ({ header, align: "right" }));

function measuresTable(stances: readonly FloorStance[], format: LengthFormat): string {
  const { units } = format;
  const cell = (mm: number | null | undefined) =>
    mm === null || mm === undefined ? "-" : lengthCell(mm, format);
  const heightCell = (mm: number | null | undefined) => cell(mm == null ? mm : clearanceTold(mm, format));
  const columns = [
    { header: "Stance", align: "left" } as const,
    ...right([
      `Travel (${units})`,
      "Lower arm (deg)",
      `Air spring (${units})`,
      `Floor to lip (${units})`,
      `Floor to frame (${units})`,
      "Pitch (deg)",
      `Track (${units})`,
    ]),
  ];
  return textTable(
    columns,
    stances.map(({ name, travel, measures, floor }) => [
      name,
      lengthCell(travel, format),
      measures ? degreesCell(measures.lowerArmAngle) : "-",
      cell(measures?.airSpringHeight),
      heightCell(measures?.lipHeight),
      heightCell(measures?.frameHeight),
      floor ? degreesCell(floor.pitch) : "-",
      cell(floor?.track),
    ]),
  );
}

/** Each named point at each stance, and with the left and the right tire flat; empty without points. */
function clearanceTable(stances: readonly FloorStance[], format: LengthFormat): string {
  const clearanceCell = (mm: number) => lengthCell(clearanceTold(mm, format), format);
  const rows = stances.flatMap(({ name, floor, scrub }) =>
    (floor?.clearances ?? []).map(({ name: point, side, clearance }, i) => [
      name,
      point,
      side,
      clearanceCell(clearance),
      ...scrub.map((line) => clearanceCell(line.floor.clearances[i]!.clearance)),
    ]),
  );
  if (rows.length === 0) return "";
  const { units } = format;
  const columns = [
    ...["Stance", "Point", "Side"].map((header): Column => ({ header, align: "left" })),
    ...right([`Above floor (${units})`, `Left tire flat (${units})`, `Right tire flat (${units})`]),
  ];
  return `What may drag, - = below:\n${textTable(columns, rows)}`;
}

function rollTable({ stances }: RollCoverage, format: LengthFormat): string {
  const { units } = format;
  const columns: Column[] = [
    ...["Stance", "Pose"].map((header): Column => ({ header, align: "left" })),
    ...right([
      `Left travel (${units})`,
      `Right travel (${units})`,
      "Roll (deg)",
      "Left camber to floor (deg)",
      "Right camber to floor (deg)",
      `Lowest point (${units})`,
      `Roll center (${units})`,
    ]),
    { header: "In the check", align: "left" },
  ];
  const inCheck = { covered: "yes", stopped: "up to its stop", uncovered: "not all" } as const;
  const rows = stances.flatMap(({ name, cases }) =>
    cases.map(({ asked, travels, floor, state }) => {
      const lowest =
        floor && floor.clearances.length > 0 ? Math.min(...floor.clearances.map((c) => c.clearance)) : null;
      const center = floor?.rollCenter ?? null;
      return [
        name,
        askedWords(asked),
        travels ? lengthCell(travels.left, format) : "-",
        travels ? lengthCell(travels.right, format) : "-",
        floor ? degreesCell(floor.roll) : "out of reach",
        floor ? degreesCell(floor.left.camber) : "-",
        floor ? degreesCell(floor.right.camber) : "-",
        lowest === null ? "-" : lengthCell(clearanceTold(lowest, format), format),
        center === null ? "-" : lengthCell(center.height, format),
        inCheck[state],
      ];
    }),
  );
  return textTable(columns, rows);
}

function howWorked({ setup: { floor } }: Model): string {
  const rear =
    floor?.rear === "stays"
      ? "The rear stays at its measured height, so the truck pitches about the rear axle."
      : "The rear follows the front, so the truck stays level lengthwise.";
  return (
    `${rear} Roll + = left side up.\n` +
    "Camber here is to the floor, + = top leans outward. With a tire flat the wheel stands on its rim flange. Tires and\n" +
    "bushings are taken as rigid.\n"
  );
}
