import { type ReadingAsk, WORKSHEET_LINES } from "../../setup/worksheet/worksheetLines.ts";
import { type Ask, askDocument } from "../measure/ask.ts";
import { ASSUMED_LIP_POINTS } from "../measure/assumedTruck.ts";
import { TAPE_READINGS } from "../measure/tapeReadings.ts";

/**
 * What a worksheet may ask for next: its own lines in their order, then all else that can be reached with a tape. How far
 * ahead a point of the lip lies is left out: the lip is read at stations that are struck on the floor first.
 */
export const WORKSHEET_CANDIDATES: readonly Ask[] = [
  ...WORKSHEET_LINES.flatMap(({ asks }) => ("reading" in asks ? [askFrom(asks.reading)] : [])),
  ...TAPE_READINGS.filter((ask) => !(ask.kind === "ahead" && ASSUMED_LIP_POINTS.has(ask.point))),
];

/** A line's reading as the study of readings asks for it. */
function askFrom(reading: ReadingAsk): Ask {
  const { side = "left" } = reading;
  if ("between" in reading) return { kind: "between", points: reading.between, side };
  if ("angle" in reading) return { kind: "angle", arm: reading.angle, side };
  if ("size" in reading) return { kind: "size", of: reading.size, side };
  const from = ("from" in reading && reading.from) || "centerline";
  if ("height" in reading) return { kind: "height", point: reading.height, from, side };
  if ("offset" in reading) return { kind: "offset", point: reading.offset, from, side };
  return { kind: "ahead", point: reading.ahead, from, side };
}

/** What the study asks for as a line has it; null for what is no single number. */
export function lineFrom(ask: Ask): ReadingAsk | null {
  return ask.kind === "plumb" || ask.kind === "stations" ? null : (askDocument(ask) as unknown as ReadingAsk);
}
