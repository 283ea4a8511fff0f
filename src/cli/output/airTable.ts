import type { AirEquilibrium } from "../../studies/air/airEquilibrium.ts";
import type { AirReport, AirStance } from "../../studies/air/airOf.ts";
import type { AirState } from "../../studies/air/airState.ts";
import type { Model } from "../../studies/model/model.ts";
import { formatOf } from "../../studies/wording/formatOf.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit, quantityInUnits } from "../../units/quantity.ts";
import { AIR_CAUTIONS } from "./cautions.ts";
import { type Column, heading, lengthCell, textTable } from "./textTable.ts";

/** The air springs as a person reads them: where a limit is passed, each stance, and over travel. */
export function airTable(report: AirReport, model: Model): string {
  const { setup } = model;
  const format = formatOf(setup);
  return [
    `${heading(setup)}\n${sentences(report, model, format)}`,
    report.atPressure.map((found) => `${equilibriumWords(found, model, format)}\n`).join(""),
    `At each stance:\n${stancesTable(report.stances, model, format)}`,
    `Over travel, left side:\n${textTable(
      columns("Travel", model),
      report.byTravel.map((state) => [lengthCell(state.travel, format), ...stateCells(state, model, format)]),
    )}`,
    `${howWorked(report, model)}\n`,
    AIR_CAUTIONS,
  ]
    .filter((block) => block !== "")
    .join("\n");
}

function sentences({ stances }: AirReport, model: Model, format: LengthFormat): string {
  const { masses, airSpring } = model.setup;
  const lines: string[] = [];
  for (const { name, left, right } of stances) {
    for (const state of [left, right]) {
      if (state === null) continue;
      const where = `at the "${name}" stance`;
      const spring = `The ${state.side} air spring`;
      if (state.heightWithin !== "within")
        lines.push(
          `${spring} is ${formatLength(state.height, format)} high ${where}, ${state.heightWithin === "below" ? "less than its least height" : "more than its greatest height"}.`,
        );
      if (state.pressureWithin === "below" || state.pressureWithin === "above")
        lines.push(
          `${spring} takes ${pressureWords(state.pressure!, model)} to carry its corner ${where}, ${state.pressureWithin === "below" ? "less than its least pressure" : "more than its greatest pressure"}.`,
        );
      if (state.pressure === null && masses !== null && airSpring?.curve)
        lines.push(
          `The load curve holds no pressure at which the ${state.side} air spring carries its corner ${where}.`,
        );
    }
  }
  if (masses === null) lines.push("No pressures: the setup has no masses block.");
  if (airSpring !== null && airSpring.curve === null)
    lines.push("No pressures: the air spring has no curve.");
  return lines.map((line) => `${line}\n`).join("");
}

function columns(first: "Travel" | "Stance", { setup }: Model): Column[] {
  const { units } = setup;
  const load = bareUnit("load", units);
  const numbers = [
    `Height (${units})`,
    "Motion ratio",
    `Load (${load})`,
    `Pressure (${bareUnit("pressure", units)})`,
    `Spring rate (${load}/${units})`,
    `Wheel rate (${load}/${units})`,
    "Ride (Hz)",
  ].map((header): Column => ({ header, align: "right" }));
  return first === "Travel"
    ? [{ header: `Travel (${units})`, align: "right" }, ...numbers]
    : [{ header: "Stance", align: "left" }, ...numbers];
}

function stancesTable(stances: readonly AirStance[], model: Model, format: LengthFormat): string {
  const rows = stances.flatMap(({ name, left, right }) =>
    [left, right].flatMap((state) =>
      state === null ? [] : [[`${name}, ${state.side}`, ...stateCells(state, model, format)]],
    ),
  );
  return textTable(columns("Stance", model), rows);
}

function stateCells(state: AirState, { setup }: Model, format: LengthFormat): string[] {
  const { units } = setup;
  const number = (value: number | null, digits: number) => (value === null ? "-" : value.toFixed(digits));
  const load = (value: number | null) => value && quantityInUnits(value, "load", units);
  const rate = (value: number | null) =>
    number(value && quantityInUnits(value, "load", units) / unitsFromMm(1, units), 0);
  return [
    lengthCell(state.height, format),
    state.motionRatio.toFixed(3),
    number(load(state.load), 0),
    number(state.pressure && quantityInUnits(state.pressure, "pressure", units), 1),
    rate(state.springRate),
    rate(state.wheelRate),
    number(state.frequency, 2),
  ];
}

function equilibriumWords(found: AirEquilibrium, model: Model, format: LengthFormat): string {
  const { side, rest, travel, balances, pressure } = found;
  const start = `Held at ${pressureWords(pressure, model)} the ${side} air spring`;
  const at = travel === null ? "" : `travel ${formatLength(travel, format)}`;
  const others = balances.filter((balance) => balance.travel !== travel);
  const more =
    others.length === 0
      ? ""
      : ` It also balances at ${others
          .map((one) => `${formatLength(one.travel, format)} (${one.stable ? "stable" : "unstable"})`)
          .join(", ")}.`;
  switch (rest) {
    case "balance":
      return `${start}, raised from full bump, carries its corner at ${at}.${more}`;
    case "bump":
      return `${start} does not lift its corner off ${at}.${more}`;
    case "droop":
      return `${start} lifts its corner to ${at}, the end.${more}`;
    default:
      return `${start} ends somewhere its load curve does not hold.${more}`;
  }
}

function howWorked({ byTravel }: AirReport, { setup }: Model): string {
  const { airSpring } = setup;
  if (airSpring === null || airSpring.curve === null) return "Height is mount to mount.";
  const curve =
    airSpring.curve.kind === "loads"
      ? "the chart of loads, straight between its points"
      : "gauge pressure × effective area";
  const volume = byTravel.some(({ volumeIsEstimate }) => volumeIsEstimate)
    ? ", the volume estimated as effective area × height"
    : "";
  return `Height is mount to mount; pressures are gauge. Loads by ${curve}. Rates with the air closed in, p × V^${airSpring.exponent} constant in absolute pressure${volume}; the tire and bushings are taken as rigid.`;
}

function pressureWords(pressure: number, { setup: { units } }: Model): string {
  return `${quantityInUnits(pressure, "pressure", units).toFixed(1)} ${bareUnit("pressure", units)}`;
}
