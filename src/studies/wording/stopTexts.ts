import { formatAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { LimitBorder } from "../limits/limitBorders.ts";
import { amountWords } from "./amountWords.ts";
import { limitThing } from "./limitThing.ts";
import { lockText, travelText } from "./poseText.ts";
import { safeLength, safePercent, steerDecimals } from "./safeSide.ts";
import type { LowStop, SteerStop } from "./stopFacts.ts";

/** How far it steers as an angle, where that is known, else as a share of lock: `31°`, `81% of lock`. */
export function farText({ angle, percent }: SteerStop): string {
  return angle === null ? `${percent}% of lock` : formatAngle(angle, steerDecimals(angle));
}

/** Beside the map: `39% of lock (11° left wheel), then fender lip, left side`. */
export function steerPanelText(stop: SteerStop): string {
  const { name, side, percent, angle } = stop;
  const wheel = angle === null ? "" : ` (${farText(stop)} ${side} wheel)`;
  switch (stop.stop) {
    case "end":
      return "the lock";
    case "unproven":
      return `${percent}% of lock; past it nothing is proven`;
    case "limit":
      return stop.isNowhere ? `nowhere: past ${name}` : `${percent}% of lock, then ${name}`;
    case "reach":
      return `${percent}% of lock${wheel}, then the ${side} ${name} ends`;
    case "touch":
      if (stop.isAlways) return `nowhere: ${name} touches at every pose, ${side} side`;
      return stop.isNowhere
        ? `nowhere: ${name} touches, ${side} side`
        : `${percent}% of lock${wheel}, then ${name}, ${side} side`;
  }
}

/** Beside the map: `3 1/8 in bump, then fender lip, left side`. */
export function lowPanelText(stop: LowStop, format: LengthFormat): string {
  const { name, side, from } = stop;
  const low = travelText(stop.travel, format);
  switch (stop.stop) {
    case "end":
      return "full bump";
    case "unproven":
      return `${low}; past it nothing is proven`;
    case "limit":
      return stop.isNowhere ? `nowhere: past ${name}` : `${low}, then ${name}`;
    case "reach":
      return `${low}, then the ${side} ${name} ends`;
    case "touch":
      if (stop.isAlways) return `nowhere: ${name} touches at every pose, ${side} side`;
      return stop.isNowhere && from < 0
        ? `nowhere: even at full droop ${name} touches, ${side} side`
        : `${low}, then ${name}, ${side} side`;
  }
}

/** On the sheet: `to 31°, then the fender lip touches`. */
export function steerSheetText(stop: SteerStop): string {
  const { part } = stop;
  const far = farText(stop);
  switch (stop.stop) {
    case "end":
      return "to the lock";
    case "unproven":
      return `to ${far}, past it nothing is proven`;
    case "limit":
      return stop.isNowhere ? `nowhere, past the ${part}` : `to ${far}, then the ${part} is met`;
    case "reach":
      return `to ${far}, then the ${part} ends`;
    case "touch":
      if (stop.isAlways) return `nowhere, the ${part} touches at every pose`;
      return stop.isNowhere
        ? `nowhere, the ${part} touches straight ahead`
        : `to ${far}, then the ${part} touches`;
  }
}

/** At the counter: a clause that begins with the name. @param who as it stands in a sentence */
export function steerClauseOf(who: string, stop: SteerStop, format: LengthFormat): string {
  const { part, side, surface, gap } = stop;
  const far = farText(stop);
  switch (stop.stop) {
    case "end":
      return `${who} steers lock to lock and nothing touches`;
    case "unproven":
      return `${who} is proven to touch nothing up to ${far} of steer; past that nothing is proven`;
    case "limit":
      return `${who} steers to ${far}, where the ${limitThing(part)} is met; nothing touches before`;
    case "reach":
      return `${who} steers to ${far}, where the ${side} ${part} can go no farther; nothing touches before`;
    case "touch":
      if (stop.isAlways)
        return `the ${surface} of ${who} rubs the ${part} by ${amountWords(gap ?? 0, format)}, whichever way it is steered`;
      return stop.isNowhere
        ? `the ${surface} of ${who} touches the ${part} even straight ahead`
        : `the ${surface} of ${who} meets the ${part} at ${far} of steer`;
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
      return `- (${at}: no proof)`;
    case "limit":
      return stop.isNowhere ? `- (past ${side} ${name})` : `- (${at}: ${side} ${name})`;
    case "reach":
      return `- (${at}: ${side} ${name})`;
    case "touch":
      return stop.isAlways ? `nowhere: ${name}, ${side}, at every pose` : `${at} ${name}, ${side}`;
  }
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
  const way = border.at < from ? "up" : "down";
  const at =
    along === "travel"
      ? travelText(safeLength(border.at, way, format), format)
      : lockText((Math.sign(border.at) * safePercent(border.at)) / 100);
  switch (border.stop) {
    case "limit":
      return `${border.name} (${border.side}) at ${at}`;
    case "reach":
      return `the ${border.side} ${border.joint} ends at ${at}`;
    case "unproven":
      return `nothing is proven past ${at}`;
    case "end":
      return `nothing up to ${at}`;
  }
}
