import type { AirReport, AirStance } from "../../studies/air/airOf.ts";
import type { AirState } from "../../studies/air/airState.ts";
import type { Model } from "../../studies/model/model.ts";
import {
  airHeightTold,
  airSentences,
  equilibriumSentence,
  holdingText,
  quantityText,
} from "../../studies/wording/airWords.ts";
import { AIR_CAUTIONS } from "../../studies/wording/cautions.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit, quantityInUnits } from "../../units/quantity.ts";
import { type Column, heading, lengthCell, textTable } from "./textTable.ts";

/** The air springs as a person reads them: where a limit is passed, each stance, and over travel. */
export function airTable(report: AirReport, model: Model): string {
  const { setup } = model;
  const format = formatOf(setup);
  return [
    `${heading(setup)}\n${airSentences(report, model, format)
      .map((line) => `${line}\n`)
      .join("")}`,
    report.atPressure
      .map((found) => {
        const held = quantityText(found.pressure, "pressure", setup.units);
        return `${equilibriumSentence(found, `Held at ${held}, the ${found.side} side`, setup, format)}\n`;
      })
      .join(""),
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

function columns(first: "Travel" | "Stance", { setup }: Model): Column[] {
  const { units } = setup;
  const load = bareUnit("load", units);
  const numbers = [
    `Height (${units})`,
    "Motion ratio",
    `Load (${load})`,
    `To hold it here (${bareUnit("pressure", units)})`,
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
  const { units, airSpring } = setup;
  const number = (value: number | null, digits: number) => (value === null ? "-" : value.toFixed(digits));
  const load = (value: number | null) => value && quantityInUnits(value, "load", units);
  const rate = (value: number | null) =>
    number(value && quantityInUnits(value, "load", units) / unitsFromMm(1, units), 0);
  return [
    lengthCell(airSpring ? airHeightTold(state.height, airSpring, format) : state.height, format),
    state.motionRatio.toFixed(3),
    number(load(state.load), 0),
    state.noPressure === null
      ? number(state.pressure && quantityInUnits(state.pressure, "pressure", units), 1)
      : holdingText(state, airSpring!, units),
    rate(state.springRate),
    rate(state.wheelRate),
    number(state.frequency, 2),
  ];
}

function howWorked({ byTravel }: AirReport, { setup }: Model): string {
  const { airSpring } = setup;
  if (airSpring === null || airSpring.curve === null) return "Height is mount to mount.";
  const curve =
    airSpring.curve.kind === "loads"
      ? "the load curve, straight between its points"
      : "gauge pressure × effective area";
  const volume = byTravel.some(({ volumeIsEstimate }) => volumeIsEstimate)
    ? ", the volume estimated as effective area × height"
    : "";
  return `Height is mount to mount; pressures are gauge. Loads by ${curve}. Rates with the air closed in, p × V^${airSpring.exponent} constant in absolute pressure${volume}; the tire and bushings are taken as rigid.`;
}
