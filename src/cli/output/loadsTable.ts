import type { LengthUnit } from "../../setup/types/types.ts";
import { type LoadsCase, type LoadsReport, largestForces } from "../../studies/loads/loadsReport.ts";
import type { Stress } from "../../studies/loads/strengthOf.ts";
import type { Model } from "../../studies/model/model.ts";
import type { VariantWeight } from "../../studies/strength/variantWeights.ts";
import { LOADS_CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import {
  boundNumber,
  deflectionText,
  FORCE_WORDS,
  forceNumber,
  governsSentence,
  howLoadsSentence,
  noFrameSentence,
  stressCells,
} from "../../studies/wording/loadsWords.ts";
import {
  unsprungSentence,
  variantTitle,
  WEIGHTS_COMMON,
  weightDifference,
  weightText,
} from "../../studies/wording/weightWords.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import {
  type Column,
  cutShortLine,
  heading,
  lengthCell,
  pointCell,
  steerCell,
  textTable,
} from "./textTable.ts";

/** The loads as a person reads them: forces by case, stresses, what gives, weight. @param weights of the setup and its variants */
export function loadsTable(report: LoadsReport, model: Model, weights: readonly VariantWeight[]): string {
  const { setup } = model;
  const format = formatOf(setup);
  const unit = setup.units === "in" ? "lb" : "N";
  const { cases, worst, weight } = report;
  const sentences = [
    governsSentence(report, setup, format),
    noFrameSentence(report.noFrame),
    howLoadsSentence(report, setup.units),
  ].flatMap((line) => (line === null ? [] : [`${line}\n`]));
  return [
    `${heading(setup)}\n${cutShortLine("loads", report)}${sentences.join("")}`,
    `Forces on the knuckle (${unit}; x forward, y left, z up), of the spring on its arm:\n${forcesTable(cases, format)}`,
    cases.some(({ strength }) => strength !== null)
      ? `Largest shares of yield, by place:\n${sharesTable(cases, format)}`
      : "",
    cases.some(({ strength }) => strength?.deflection)
      ? `How far the hub face deflects, and what that does to camber:\n${deflections(cases, format)}`
      : "",
    worst.length > 0
      ? `Where each force is largest over all travel and both locks (${unit}):\n${worstTable(report, format)}`
      : "",
    weight === null
      ? ""
      : `Weight, by lengths and areas alone: ${weightText(weight.mass, setup.units)}${weight.center ? `, center of mass ${pointCell(weight.center, format)} in the knuckle frame` : ""}.\n${weightsTable(weights, setup.units)}${WEIGHTS_COMMON}\n`,
    LOADS_CAUTIONS,
  ]
    .filter((block) => block !== "")
    .join("\n");
}

const left = (header: string): Column => ({ header, align: "left" });
const right = (header: string): Column => ({ header, align: "right" });
const POSE = [left("Case"), left("Side"), right("Travel"), right("Steer")];

function poseCells(one: Pick<LoadsCase, "side" | "travel" | "steer">, name: string, format: LengthFormat) {
  return [name, one.side, lengthCell(one.travel, format), steerCell(one.steer)];
}

function forcesTable(cases: readonly LoadsCase[], format: LengthFormat): string {
  const names = (Object.keys(FORCE_WORDS) as (keyof typeof FORCE_WORDS)[]).filter((name) =>
    cases.some(({ on }) => on[name] !== null),
  );
  const cell = (force: readonly number[]) => force.map((n) => forceNumber(n, format.units)).join(", ");
  return textTable(
    [...POSE, ...names.map((name) => right(FORCE_WORDS[name]))],
    cases.map((one) => [
      ...poseCells(one, one.name, format),
      ...names.map((name) => (one.on[name] === null ? "-" : cell(one.on[name].force))),
    ]),
  );
}

/** Of every place the case in which it has its largest share, largest first. */
function sharesTable(cases: readonly LoadsCase[], format: LengthFormat): string {
  const worst = new Map<string, { readonly stress: Stress; readonly one: LoadsCase }>();
  for (const one of cases)
    for (const stress of one.strength?.stresses ?? []) {
      const key = stressCells(stress, format).place;
      const before = worst.get(key);
      if (before === undefined || stress.shareOfYield > before.stress.shareOfYield)
        worst.set(key, { stress, one });
    }
  const rows = [...worst].sort(([, a], [, b]) => b.stress.shareOfYield - a.stress.shareOfYield);
  return textTable(
    [left("Place"), right("Stress"), right("Plain"), right("Of yield"), left("Material"), ...POSE],
    rows.map(([, { stress, one }]) => {
      const cells = stressCells(stress, format);
      return [
        ...[cells.place, cells.stress, cells.plain, cells.share, cells.material],
        ...poseCells(one, one.name, format),
      ];
    }),
  );
}

/** Nothing where there is no variant to compare. */
function weightsTable(weights: readonly VariantWeight[], units: LengthUnit): string {
  if (weights.length < 2) return "";
  return textTable(
    [left("Variant"), right("Weight"), left("Difference"), left("With it")],
    weights.map((weight) => [
      variantTitle(weight.name),
      weight.mass === null ? "-" : weightText(weight.mass, units),
      weightDifference(weight, units),
      unsprungSentence(weight, units) ?? "-",
    ]),
  );
}

function deflections(cases: readonly LoadsCase[], format: LengthFormat): string {
  return textTable(
    [...POSE, left("Hub face")],
    cases.flatMap((one) =>
      one.strength?.deflection
        ? [[...poseCells(one, one.name, format), deflectionText(one.strength.deflection, format.units)]]
        : [],
    ),
  );
}

function worstTable({ worst }: LoadsReport, format: LengthFormat): string {
  return textTable(
    [left("Force"), right("Largest found"), right("No pose passes"), ...POSE],
    largestForces(worst).map((one) => [
      FORCE_WORDS[one.name],
      forceNumber(one.size, format.units),
      boundNumber(one, format.units),
      ...poseCells(one, one.case, format),
    ]),
  );
}
