import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { LimitBorder } from "../limits/limitBorders.ts";
import { amountWords } from "./lengths.ts";
import { limitMet, limitThing } from "./limitSentences.ts";
import { lockText, travelText, wheelAngleText } from "./poseWords.ts";
import { safeLength, safePercent, steerDecimals } from "./safeSide.ts";
import type { LowStop, SteerStop, StopFacts } from "./stopFacts.ts";

/** How far it steers as an angle, where that is known, else as a share of lock: `31°`, `81% of lock`. */
export function farText({ angle, percent }: SteerStop): string {
  return angle === null ? `${percent}% of lock` : formatAngle(angle, steerDecimals(angle));
}

/** Beside the map: `to 39% of lock (left wheel 11°), then fender lip, left side`. */
export function steerPanelText(stop: SteerStop): string {
  const { name, side, percent, angle } = stop;
  const wheel = angle === null || side === null ? "" : ` (${wheelAngleText(side, farText(stop))})`;
  switch (stop.stop) {
    case "end":
      return "to full lock";
    case "unproven":
      return stop.isNowhere ? "not known" : `to ${percent}% of lock; past that it is not known`;
    case "limit":
      return stop.isNowhere
        ? `nowhere: past the ${limitThing(name)}`
        : `to ${percent}% of lock, then ${name}`;
    case "reach":
      return `to ${percent}% of lock${wheel}, then the ${side} ${name} cannot follow`;
    case "touch":
      if (stop.isAlways) return `nowhere: ${name} touches at every pose, ${side} side`;
      return stop.isNowhere
        ? `nowhere: ${name} touches, ${side} side`
        : `to ${percent}% of lock${wheel}, then ${name}, ${side} side`;
  }
}

/**
 * How far it steers, and where before that the allowance is no longer kept: `to full lock; keeps 1/4 in up to 24% of lock (fender
 * lip, left side)`. @param kept ends where the allowance, mm, is no longer kept
 */
export function steerWayText(
  kept: SteerStop,
  end: SteerStop,
  allowance: number,
  format: LengthFormat,
): string {
  const told = steerPanelText(end);
  const isTouch = end.stop === "touch";
  if (end.isNowhere || end.isAlways || kept.stop !== "touch" || (isTouch && kept.percent === end.percent))
    return told;
  const part = isTouch && kept.name === end.name ? "" : ` (${kept.name}, ${kept.side} side)`;
  const asked = formatLength(safeLength(allowance, "up", format), format);
  if (kept.isAlways) return `${told}; never keeps ${asked}${part}`;
  if (kept.isNowhere) return `${told}; not even straight ahead keeps ${asked}${part}`;
  const least = amountWords(safeLength(allowance, "down", format), format);
  return `${told}; keeps ${least} up to ${kept.percent}% of lock${part}`;
}

/** Beside the map: `to 3 1/8 in bump, then fender lip, left side`. */
export function lowPanelText(stop: LowStop, format: LengthFormat): string {
  const { name, side, from } = stop;
  const low = travelText(stop.travel, format);
  switch (stop.stop) {
    case "end":
      return "to full bump";
    case "unproven":
      return stop.isNowhere ? "not known" : `to ${low}; past that it is not known`;
    case "limit":
      return stop.isNowhere ? `nowhere: past the ${limitThing(name)}` : `to ${low}, then ${name}`;
    case "reach":
      return `to ${low}, then the ${side} ${name} cannot follow`;
    case "touch":
      if (stop.isAlways) return `nowhere: ${name} touches at every pose, ${side} side`;
      return stop.isNowhere && from < 0
        ? `nowhere: even at full droop ${name} touches, ${side} side`
        : `to ${low}, then ${name}, ${side} side`;
  }
}

/** The two ends of a way down, in words. */
export interface LowWayParts {
  /** How low the allowance is kept; null where it ends nothing before. */
  readonly kept: {
    readonly text: string;
    /** Whether there is a pose down to which it is. */
    readonly isPlace: boolean;
  } | null;
  readonly end: string;
}

/**
 * The way down as far as the verdict calls it clear, and to where it ends: `keeps 1/4 in down to 2 11/16 in bump` and `touches past
 * 3 3/16 in bump: fender lip, left side`; the end alone where the allowance ends nothing before.
 * @param kept ends where the allowance, mm, is no longer kept
 */
export function lowWayParts(
  kept: LowStop,
  end: LowStop,
  allowance: number,
  format: LengthFormat,
): LowWayParts {
  const isTouch = end.stop === "touch";
  const isStuck = end.isAlways || (isTouch && end.isNowhere && end.from < 0);
  if (isStuck || kept.stop !== "touch" || (isTouch && kept.travel === end.travel))
    return { kept: null, end: lowPanelText(end, format) };
  // What is kept is told as no more than is proven; what is not kept, as no less.
  const least = amountWords(safeLength(allowance, "down", format), format);
  const asked = formatLength(safeLength(allowance, "up", format), format);
  const part = isTouch && kept.name === end.name ? "" : ` (${kept.name}, ${kept.side} side)`;
  const isPlace = !kept.isAlways && !(kept.isNowhere && kept.from < 0);
  const keeps = kept.isAlways
    ? `never keeps ${asked}${part}`
    : isPlace
      ? `keeps ${least} down to ${travelText(kept.travel, format)}${part}`
      : `not even full droop keeps ${asked}${part}`;
  const told = isTouch
    ? `touches past ${travelText(end.travel, format)}: ${end.name}, ${end.side} side`
    : lowPanelText(end, format);
  return { kept: { text: keeps, isPlace }, end: told };
}

/** Both in one line: `keeps 1/4 in down to 2 11/16 in bump; touches past 3 3/16 in bump: fender lip, left side`. */
export function lowWayText(...ways: Parameters<typeof lowWayParts>): string {
  const { kept, end } = lowWayParts(...ways);
  return kept === null ? end : `${kept.text}; ${end}`;
}

/** On the sheet: `to 31°, where the fender lip touches`. @param isBoth both ways alike: `to 31° either way, where …` */
export function steerSheetText(stop: SteerStop, isBoth: boolean): string {
  const { part } = stop;
  const far = `to ${farText(stop)}${isBoth ? " either way" : ""}`;
  switch (stop.stop) {
    case "end":
      return isBoth ? "lock to lock" : "to the lock";
    case "unproven":
      return stop.isNowhere ? "how far is not known" : `${far}; past that it is not known`;
    case "limit":
      return stop.isNowhere ? `nowhere, past the ${limitThing(part)}` : `${far}, where ${limitMet(part)}`;
    case "reach":
      return `${far}, where the ${part} cannot follow any farther`;
    case "touch":
      if (stop.isAlways) return `nowhere, the ${part} touches at every pose`;
      return stop.isNowhere
        ? `nowhere, the ${part} touches straight ahead`
        : `${far}, where the ${part} touches`;
  }
}

/** At the counter: a clause that begins with the name. @param who as it stands in a sentence; `it` where it was named */
export function steerClauseOf(who: string, stop: SteerStop, format: LengthFormat): string {
  const { part, side, surface, gap } = stop;
  const far = farText(stop);
  const own = who === "it" ? `its ${surface}` : `the ${surface} of ${who}`;
  switch (stop.stop) {
    case "end":
      return `${who} steers lock to lock and nothing touches`;
    case "unproven":
      return stop.isNowhere
        ? `how far ${who} steers is not known`
        : `${who} touches nothing up to ${far} of steer; past that it is not known`;
    case "limit":
      return stop.isNowhere
        ? `${who} is past the ${limitThing(part)} straight ahead already`
        : `${who} steers to ${far}, where ${limitMet(part)}; nothing touches before`;
    case "reach":
      return `${who} steers to ${far}, where the ${side} ${part} cannot follow any farther; nothing touches before`;
    case "touch":
      if (stop.isAlways)
        return `${own} rubs the ${part} by ${amountWords(gap ?? 0, format)}, whichever way it is steered`;
      return stop.isNowhere
        ? `${own} touches the ${part} even straight ahead`
        : `${own} meets the ${part} at ${far} of steer`;
  }
}

/** What stops a way, as the end of a sentence: `the fender lip touches on the left`, `the left steering stop is met`. */
export function stopWords({ stop, name, side }: StopFacts): string {
  switch (stop) {
    case "end":
      return "nothing stops it";
    case "unproven":
      return "it is not known what comes next";
    case "limit":
      return limitMet(name, side);
    case "reach":
      return `the ${side} ${name} cannot follow any farther`;
    case "touch":
      return `the ${name} touches on the ${side}`;
  }
}

/**
 * In a table of the command line, where a column's header says what is told: `81% fender lip, left`.
 * @param at the end of the way as told. @param end what the end of the range is called.
 */
export function stopCell(
  stop: Pick<SteerStop, "stop" | "isNowhere" | "isAlways" | "name" | "side">,
  at: string,
  end: string,
): string {
  const { name, side } = stop;
  switch (stop.stop) {
    case "end":
      return `- (${end})`;
    case "unproven":
      return `- (not known past ${at})`;
    case "limit":
      return stop.isNowhere ? `- (past ${side} ${name})` : `- (${at}: ${side} ${name})`;
    case "reach":
      return `- (${at}: ${side} ${name})`;
    case "touch":
      return stop.isAlways ? `nowhere: ${name}, ${side}, at every pose` : `${at} ${name}, ${side}`;
  }
}

/** Where a border is told: never farther than what is proven. @param from where the way starts, mm or steer */
export function borderAt(
  border: LimitBorder,
  along: "travel" | "steer",
  from: number,
  format: LengthFormat,
): number {
  const way = border.at < from ? "up" : "down";
  return along === "travel"
    ? safeLength(border.at, way, format)
    : (Math.sign(border.at) * safePercent(border.at)) / 100;
}

/**
 * What is met on a way from a stance: `bump stop (left) at 3 in bump`.
 * @param along what `at` of the border is. @param from where the way starts, mm or steer
 */
export function borderText(
  border: LimitBorder,
  along: "travel" | "steer",
  from: number,
  format: LengthFormat,
): string {
  const told = borderAt(border, along, from, format);
  const at = along === "travel" ? travelText(told, format) : lockText(told);
  switch (border.stop) {
    case "limit":
      return `${border.name} (${border.side}) at ${at}`;
    case "reach":
      return `the ${border.side} ${border.joint} cannot follow past ${at}`;
    case "unproven":
      return border.at === from ? "not known" : `not known past ${at}`;
    case "end":
      return `nothing up to ${at}`;
  }
}

/** The same in a table of the command line: `3 1/8, left bump stop`. @param at as the table writes it */
export function borderCell(border: LimitBorder, at: string, end: string): string {
  switch (border.stop) {
    case "limit":
      return `${at}, ${border.side} ${border.name}`;
    case "reach":
      return `${at}, out of reach of the ${border.side} ${border.joint}`;
    case "unproven":
      return `${at}, not known past it`;
    case "end":
      return `${at}, ${end}`;
  }
}
