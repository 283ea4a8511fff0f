import type { AirSpringSetup } from "../../setup/types/airTypes.ts";
import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit, type Quantity, quantityInUnits } from "../../units/quantity.ts";
import type { AirEquilibrium } from "../air/airEquilibrium.ts";
import type { AirReport } from "../air/airOf.ts";
import { type AirState, type NoPressure, type Within, within } from "../air/airState.ts";
import type { Model } from "../model/model.ts";
import { seatClause } from "./airSeatWords.ts";
import { lengthText, withMinus } from "./lengths.ts";
import { travelText } from "./poseWords.ts";
import { onSafeSide, type SafeWay, safeLength } from "./safeSide.ts";

/** Toward the nearer of two limits, and past one away from it: no more is told in hand than there is. null without limits. */
function towardLimit(value: number, least: number | null, most: number | null): SafeWay | null {
  if (least === null && most === null) return null;
  const toLeast = least === null ? Number.POSITIVE_INFINITY : Math.abs(value - least);
  const toMost = most === null ? Number.POSITIVE_INFINITY : Math.abs(value - most);
  return toLeast <= toMost ? "down" : "up";
}

/** A spring's height mount to mount as it is told, mm. */
export function airHeightTold(
  height: number,
  { leastHeight, greatestHeight }: AirSpringSetup,
  format: LengthFormat,
): number {
  const way = towardLimit(height, leastHeight, greatestHeight);
  return way === null ? height : safeLength(height, way, format);
}

/** The same with its unit. */
export function airHeightText(height: number, spring: AirSpringSetup, format: LengthFormat): string {
  return lengthText(airHeightTold(height, spring, format), format);
}

/** A pressure in the spring, with its unit; a dash where there is none. @param pressure MPa, gauge */
export function airPressureText(
  pressure: number | null,
  { leastPressure, greatestPressure }: AirSpringSetup,
  units: LengthUnit,
): string {
  return quantityText(
    pressure,
    "pressure",
    units,
    towardLimit(pressure ?? 0, leastPressure, greatestPressure),
  );
}

/** A quantity in the file's own unit with its name: `64 psi`. A dash where there is none. @param way default the nearest */
export function quantityText(
  value: number | null,
  quantity: Quantity,
  units: LengthUnit,
  way: SafeWay | null = null,
): string {
  if (value === null) return "–";
  const number = quantityInUnits(value, quantity, units);
  const decimals = number !== 0 && Math.abs(number) < 10 ? 1 : 0;
  const told = way === null ? number : onSafeSide(number, 10 ** -decimals, way);
  return `${withMinus(told.toFixed(decimals))} ${bareUnit(quantity, units)}`;
}

/** A rate in load a length: `310 lb/in`. @param rate N/mm */
export function rateText(rate: number | null, units: LengthUnit): string {
  if (rate === null) return "–";
  const number = quantityInUnits(rate, "load", units) / unitsFromMm(1, units);
  return `${withMinus(number.toFixed(number < 100 ? 1 : 0))} ${bareUnit("load", units)}/${units}`;
}

/** A ride frequency: `1.35 Hz`. */
export function frequencyText({ frequency }: AirState): string {
  return frequency === null ? "–" : `${frequency.toFixed(2)} Hz`;
}

/** What is wrong with a height or a pressure, in two words; "" = it is within its limits. */
export function beyondText(within: Within | null, what: "height" | "pressure"): string {
  switch (within) {
    case null:
    case "within":
      return "";
    case "below":
      return `below least ${what}`;
    case "above":
      return `above greatest ${what}`;
  }
}

/** What of a spring is outside its limits at each stance, and why there are no pressures, one sentence each. */
export function airSentences({ stances }: AirReport, { setup }: Model, format: LengthFormat): string[] {
  const { masses, airSpring } = setup;
  if (airSpring === null) return [];
  const lines = stances.flatMap(({ name, left, right }) =>
    [left, right].flatMap((state) =>
      state === null ? [] : stateSentences(state, airSpring, `at the “${name}” stance`, format),
    ),
  );
  if (masses === null) lines.push("No pressures: the setup has no masses block.");
  else
    for (const { name, left, right } of stances)
      for (const state of [left, right])
        if (state?.noPressure)
          lines.push(`At the “${name}” stance the ${state.side} side ${NO_PRESSURE[state.noPressure]}.`);
  if (airSpring.curve === null) lines.push("No pressures: the air spring has no curve.");
  return lines;
}

const NO_PRESSURE: Readonly<Record<NoPressure, string>> = {
  lower: "is lower than the load curve starts: no pressure is known",
  higher: "is higher than the load curve goes: no pressure is known",
  less: "is carried by less than the load curve’s least pressure: no pressure is known",
  more: "is heavier than the load curve’s greatest pressure carries: no pressure is known",
};

/** In a table: the pressure that holds it here, or why none is told. */
export function holdingText(
  { pressure, noPressure }: Pick<AirState, "pressure" | "noPressure">,
  spring: AirSpringSetup,
  units: LengthUnit,
): string {
  switch (noPressure) {
    case null:
      return airPressureText(pressure, spring, units);
    case "lower":
      return "below its load curve";
    case "higher":
      return "above its load curve";
    case "less":
      return "less than its load curve has";
    case "more":
      return "more than its load curve has";
  }
}

function stateSentences(
  state: AirState,
  spring: AirSpringSetup,
  where: string,
  format: LengthFormat,
): string[] {
  const { side, height, heightWithin, pressure, pressureWithin } = state;
  const lines: string[] = [];
  if (heightWithin !== "within")
    lines.push(
      `The ${side} air spring is ${airHeightText(height, spring, format)} high ${where}, ${beyondWords(heightWithin, "height")}.`,
    );
  if (pressureWithin === "below" || pressureWithin === "above")
    lines.push(
      `The ${side} air spring takes ${airPressureText(pressure, spring, format.units)} to carry its corner ${where}, ${beyondWords(pressureWithin, "pressure")}.`,
    );
  return lines;
}

function beyondWords(within: "below" | "above", what: "height" | "pressure"): string {
  switch (within) {
    case "below":
      return `less than its least ${what}`;
    case "above":
      return `more than its greatest ${what}`;
  }
}

/** Where one side stands with a pressure held in its spring. @param who begins the sentence: `The left side` @param setup has its stops */
export function equilibriumSentence(
  { rest, travel, balances, pressure, seat }: AirEquilibrium,
  who: string,
  { limits, airSpring }: Pick<Setup, "limits" | "airSpring">,
  format: LengthFormat,
): string {
  const at = travel === null ? "" : travelText(travel, format);
  const others = balances
    .filter((balance) => balance.travel !== travel)
    .map((one) => `${travelText(one.travel, format)} (${one.stable ? "stable" : "unstable"})`);
  const more = others.length === 0 ? "" : ` It also balances at ${others.join(" and ")}.`;
  switch (rest) {
    case "balance":
      return `${who}, raised from full bump, stands at ${at}.${more}`;
    case "bump":
      return `${who}, ${pressure > 0 ? "not lifted by this pressure" : "its bag empty"}, ${seatClause(seat, { limits }, format)}.${more}`;
    case "droop":
      return `${who} is lifted all the way to ${at}, where ${limits?.droopStrap != null ? "its droop strap holds it" : "its travel ends"}.`;
    case "unknown":
      return isOffCurve(pressure, airSpring)
        ? `${who} stands at a height that is not known: its load curve does not cover this pressure.`
        : `${who} comes to rest at a height its load curve does not cover.`;
  }
}

/** Whether a chart of loads has no such pressure; one of areas holds every one. */
function isOffCurve(pressure: number, spring: AirSpringSetup | null): boolean {
  const curve = spring?.curve;
  if (curve?.kind !== "loads") return false;
  return pressure < curve.pressures[0]! || pressure > curve.pressures.at(-1)!;
}

/**
 * A pressure that somebody asks about, as what begins a sentence of the truck: `At 5 psi, below the least pressure the setup
 * allows (20 psi), the truck`. @param pressure MPa, gauge @param who `the truck`
 */
export function heldAt(pressure: number, who: string, spring: AirSpringSetup, units: LengthUnit): string {
  const { leastPressure: least, greatestPressure: most } = spring;
  const held = airPressureText(pressure, spring, units);
  switch (within(pressure, least, most)) {
    case "within":
      return `At ${held} ${who}`;
    case "below":
      return `At ${held}, below the least pressure the setup allows (${quantityText(least, "pressure", units, "up")}), ${who}`;
    case "above":
      return `At ${held}, above the greatest pressure the setup allows (${quantityText(most, "pressure", units, "down")}), ${who}`;
  }
}

/** The heights and pressures that the setup allows, each limit told no wider than it is. */
export function allowedSentence(spring: AirSpringSetup, units: LengthUnit, format: LengthFormat): string {
  const length = (mm: number | null, way: SafeWay) =>
    mm === null ? null : lengthText(safeLength(mm, way, format), format);
  const pressure = (value: number | null, way: SafeWay) =>
    value === null ? null : quantityText(value, "pressure", units, way);
  const heights = rangeWords(
    "height",
    length(spring.leastHeight, "up"),
    length(spring.greatestHeight, "down"),
  );
  const pressures = rangeWords(
    "pressure",
    pressure(spring.leastPressure, "up"),
    pressure(spring.greatestPressure, "down"),
  );
  return `The setup allows ${heights} and ${pressures}.`;
}

function rangeWords(what: string, least: string | null, most: string | null): string {
  if (least !== null && most !== null) return `${what}s from ${least} to ${most}`;
  if (least !== null) return `${what}s from ${least}`;
  return most === null ? `any ${what} (not checked)` : `${what}s up to ${most}`;
}
