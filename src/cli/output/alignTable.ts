import type { SideAlignment, TruckAlignment } from "../../studies/alignment/alignSide.ts";
import type { Model } from "../../studies/model/model.ts";
import { alignSentence } from "../../studies/wording/alignSentence.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { shimFormat } from "../../studies/wording/lengths.ts";
import { formatLength } from "../../units/formatLength.ts";
import { type Column, degreesCell, heading, lengthCell, textTable } from "./textTable.ts";

/** An alignment as a person reads it: the sentence, then what is read, what is set, and what a little more of it does. */
export function alignTable(alignment: TruckAlignment, model: Model): string {
  const [left, right] = [alignment.left, alignment.right].map((side) => sideTables(side, model));
  const tables = left === right ? `Either side\n${left}` : `Left side\n${left}\nRight side\n${right}`;
  return [`${heading(model.setup)}\n${alignSentence(alignment, model)}\n`, tables, CAUTIONS].join("\n");
}

function sideTables(side: SideAlignment, model: Model): string {
  const tables = [readings(side), settings(side, model)];
  if (side.sensitivities.length > 0) tables.push(sensitivities(side, model));
  return tables.join("\n");
}

function readings({ asBolted, aligned, targets, leftOver }: SideAlignment): string {
  const angle = (rad: number | null | undefined) =>
    rad === null || rad === undefined ? "-" : degreesCell(rad);
  return textTable(columns("Angle (deg)", ["As bolted on", "Target", "Aligned", "Off target"]), [
    ...(["camber", "caster", "toe"] as const).map((key) => [
      key,
      angle(asBolted[key]),
      angle(targets[key]),
      angle(aligned[key]),
      angle(leftOver[key]),
    ]),
    [
      "caster read by a 20° sweep",
      angle(asBolted.casterSweep?.reading),
      "-",
      angle(aligned.casterSweep?.reading),
      "-",
    ],
    [
      "the same by a gauge with factor 1.5",
      angle(asBolted.casterSweep?.roundedReading),
      "-",
      angle(aligned.casterSweep?.roundedReading),
      "-",
    ],
  ]);
}

function settings({ settings, tieRod }: SideAlignment, { setup }: Model): string {
  const format = shimFormat(setup);
  const { units } = setup;
  const length = (mm: number | null) => (mm === null ? "-" : lengthCell(mm, format));
  const decimals = (mm: number | null) =>
    mm === null ? "-" : lengthCell(mm, { units, fraction: "decimal", decimals: units === "in" ? 3 : 2 });
  return textTable(columns(`Setting (${units})`, ["As bolted on", "Set to", "Exact", "Least", "Most"]), [
    ...settings.map((adjuster) => [
      nameOf(adjuster.name, setup.adjusters?.kind),
      length(adjuster.asBolted),
      length(adjuster.setting),
      decimals(adjuster.exact),
      length(adjuster.least),
      length(adjuster.most),
    ]),
    [
      "tie rod, between its ends' centers",
      length(tieRod.asBolted),
      length(tieRod.aligned),
      decimals(tieRod.aligned),
      "-",
      "-",
    ],
  ]);
}

function sensitivities({ sensitivities }: SideAlignment, { setup }: Model): string {
  const per = formatLength(sensitivities[0]!.per, shimFormat(setup));
  const angle = (rad: number) => degreesCell(rad);
  return textTable(
    columns(`${per} more at`, ["Camber (deg)", "Caster (deg)", "Toe until set again (deg)"]),
    sensitivities.map(({ name, camber, caster, toeUntilSet }) => [
      nameOf(name, setup.adjusters?.kind),
      angle(camber),
      angle(caster),
      angle(toeUntilSet),
    ]),
  );
}

function nameOf(name: string, kind: string | undefined): string {
  if (kind === "shims") return `${name} shim stack`;
  return kind === "eccentric" ? `${name} eccentric` : name === "both legs" ? name : `${name} leg`;
}

function columns(first: string, others: readonly string[]): Column[] {
  return [{ header: first, align: "left" }, ...others.map((header): Column => ({ header, align: "right" }))];
}
