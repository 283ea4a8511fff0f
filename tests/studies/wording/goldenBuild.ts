import { readFileSync } from "node:fs";
import { readMaterials } from "../../../src/setup/catalogs/readMaterials.ts";
import { asBuiltReport, builtKnuckles } from "../../../src/studies/jig/asBuiltReport.ts";
import { modelOnKnuckles } from "../../../src/studies/jig/asBuiltTruck.ts";
import { jigSheetOf } from "../../../src/studies/jig/jigSheet.ts";
import { carriersOf } from "../../../src/studies/loads/carriers.ts";
import { type LoadsAsk, largestForces, loadsReport } from "../../../src/studies/loads/loadsReport.ts";
import { strengthOf } from "../../../src/studies/loads/strengthOf.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { variantWeights } from "../../../src/studies/strength/variantWeights.ts";
import {
  gapSentences,
  mendSentences,
  TRUCK_COLUMNS,
  trackSentence,
  truckCells,
  truckRows,
  truckWithinSentences,
  worstGapSentence,
} from "../../../src/studies/wording/asBuiltTruckWords.ts";
import {
  BUILT_COLUMNS,
  builtCells,
  builtRows,
  JIG_CAUTIONS,
  residualLines,
  sideSentences,
  unreadSentence,
} from "../../../src/studies/wording/asBuiltWords.ts";
import { LOADS_CAUTIONS } from "../../../src/studies/wording/cautions.ts";
import { correctionSentences } from "../../../src/studies/wording/correctionWords.ts";
import { DRAWING_CAUTIONS, drawnCautions } from "../../../src/studies/wording/drawingWords.ts";
import {
  JIG_COLUMNS,
  jigCells,
  jigFormat,
  jigSetupSentences,
  readingWords,
} from "../../../src/studies/wording/jigWords.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import {
  boundNumber,
  casePoseWords,
  deflectionText,
  FORCE_WORDS,
  forceNumber,
  governsSentence,
  howLoadsSentence,
  noFrameSentence,
  stressCells,
} from "../../../src/studies/wording/loadsWords.ts";
import { orderGroups, orderRemarks } from "../../../src/studies/wording/orderRows.ts";
import {
  unsprungSentence,
  variantTitle,
  WEIGHTS_COMMON,
  WEIGHTS_HOW,
  weightDifference,
} from "../../../src/studies/wording/weightWords.ts";
import { example, truckOf } from "../loads/loadTruck.ts";
import { orderedDocument, sheetOf } from "../order/orderedTruck.ts";

const read = readMaterials(
  JSON.parse(readFileSync(new URL("../../../shared/catalogs/materials.json", import.meta.url), "utf8")),
  "materials.json",
);
const CATALOG = read.ok ? read.value : [];

const section = (title: string, lines: readonly (string | null)[]) => {
  const told = lines.flatMap((line) => (line === null || line === "" ? [] : line.trimEnd().split("\n")));
  return ["", `${title}:`, ...told.map((line) => `  ${line}`)];
};

/** What is said of a knuckle from the order to the part checked: a few documents, each chosen for what it brings up. */
export function building(): string {
  const document = example("ordered-knuckle.json");
  const readings = document.asBuilt as { left: object; right: object };
  const misread = { left: { ...readings.left, behind: 5, armUp: undefined }, right: undefined };
  return [
    "## From the order to the part",
    ...ordered("The order", {}),
    ...ordered("An order that does not go together", {
      upperBallJoint: { item: "Plover 40", seat: "1.5 in/ft" },
      brake: { rotorDiameter: 14 },
      hub: { boltPattern: "6x5.5" },
      steeringArm: { engagement: "1/4" },
      stance: "parked",
    }),
    ...jig("The jig sheet", document),
    ...jig("A jig with a table, toe built in", {
      ...document,
      jig: { jointHeight: 2, halfLength: 8, toe: 0.2 },
    }),
    ...asBuilt("As built", document),
    ...asBuilt("As built, one side read, one reading wrong, too few, and no adjusters", {
      ...document,
      asBuilt: misread,
      adjusters: undefined,
    }),
    ...loads("Loads where they are worst", document, null),
    ...loads("Loads at a pose", document, { travel: 0, steer: 0.5 }),
    ...loads("Loads without a pin", { ...document, build: {} }, { travel: 0, steer: 0 }),
    ...weights(),
    ...section("Cautions", [JIG_CAUTIONS, LOADS_CAUTIONS, ...DRAWING_CAUTIONS, drawnCautions("1:4")[1]]),
  ].join("\n");
}

function ordered(title: string, order: object): string[] {
  const sheet = sheetOf(orderedDocument(order));
  const format = formatOf(sheet.setup);
  const rows = orderGroups(sheet, format).flatMap((group) => [
    `${group.title}:`,
    ...group.rows.map(({ label, value, note }) => `  ${label}: ${value}${note === "" ? "" : ` (${note})`}`),
    ...(group.notGiven === "" ? [] : [`  ${group.notGiven}`]),
  ]);
  return section(title, [...(title === "The order" ? rows : []), ...orderRemarks(sheet, format)]);
}

function jig(title: string, document: object): string[] {
  const { model } = truckOf(document);
  const format = jigFormat(formatOf(model.setup));
  const sheet = jigSheetOf(model.setup);
  const rows = sheet.rows.map((row) => {
    const { name, how } = readingWords(row.key, sheet, format);
    return `${name}: ${under(JIG_COLUMNS, jigCells(row, format))}; ${how}`;
  });
  return section(title, [...jigSetupSentences(sheet, format), ...rows]);
}

function asBuilt(title: string, document: object): string[] {
  const { model } = truckOf(JSON.parse(JSON.stringify(document)));
  const { setup } = model;
  const [plain, format] = [formatOf(setup), jigFormat(formatOf(setup))];
  const sheet = jigSheetOf(setup);
  const report = asBuiltReport(model, "", Budget.endless())!;
  const { sides, onTheTruck } = report;
  const both = [sides.left, sides.right].flatMap((side) => side ?? []);
  const built = modelOnKnuckles(setup, builtKnuckles(setup, sides), "");
  const truck =
    onTheTruck.ok && built.ok
      ? [
          ...truckRows(onTheTruck, both[0]!.side).map(
            (row) => `${row.name}: ${under(TRUCK_COLUMNS, truckCells(row, format))}`,
          ),
          trackSentence(onTheTruck, format),
          ...gapSentences(onTheTruck, { ordered: model, built: built.model }, [], plain),
          worstGapSentence(onTheTruck, plain),
          ...truckWithinSentences(onTheTruck, both, format),
          ...mendSentences(both, onTheTruck, sheet.knuckle, model, format),
        ]
      : ["The knuckle does not go on the truck."];
  return section(title, [
    ...both.flatMap((side) => [
      ...sideSentences(side, sheet, format),
      ...builtRows(side.fit, sheet.knuckle).map(
        (row) => `${row.name}: ${under(BUILT_COLUMNS, builtCells(row, format))}`,
      ),
      ...residualLines(side.fit, sheet, format),
    ]),
    ...correctionSentences(both, sheet, format),
    unreadSentence(sides),
    ...truck,
  ]);
}

/** Cells of a table as a line: `Ordered 5 1/2 in, as built 5 35/64 in`. */
function under(columns: readonly string[], cells: readonly string[]): string {
  return cells.map((cell, i) => `${columns[i]!.toLowerCase()} ${cell}`).join(", ");
}

function loads(title: string, document: object, pose: LoadsAsk["pose"]): string[] {
  const { model } = truckOf(document);
  const { setup } = model;
  const carriers = carriersOf(setup, "");
  if (!carriers.ok) throw new TypeError(carriers.issue.mend);
  const strength = strengthOf(setup, CATALOG);
  const report = loadsReport(model, carriers.value, strength, { name: "bump", pose }, Budget.endless());
  const format = formatOf(setup);
  const [first] = report.cases;
  return section(title, [
    governsSentence(report, setup, format),
    noFrameSentence(report.noFrame),
    howLoadsSentence(report, setup.units),
    `“${first!.name}”, ${casePoseWords(first!, format)}`,
    ...largestForces(report.worst).map(
      (one) =>
        `${FORCE_WORDS[one.name]}: largest found ${forceNumber(one.size, format.units)}, no pose passes ${boundNumber(one, format.units)}; ${casePoseWords(one, format)}`,
    ),
    ...first!.strength!.stresses.map((stress) => {
      const { place, share, stress: amount, plain, material } = stressCells(stress, format);
      return `${place}: ${share}, ${amount} (${plain} plain), ${material}`;
    }),
    first!.strength!.deflection &&
      `The hub face deflects ${deflectionText(first!.strength!.deflection, setup.units)}`,
  ]);
}

function weights(): string[] {
  const lines = variantWeights(example("tubular-knuckle.json"), "").flatMap((weight) => [
    `${variantTitle(weight.name)}: ${weightDifference(weight, "in")}`,
    unsprungSentence(weight, "in"),
  ]);
  return section("Weights", [...lines, WEIGHTS_HOW, WEIGHTS_COMMON]);
}
