import { bodyPointName } from "../../setup/blocks/readings/readingPoint.ts";
import type { Setup } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { TAPE_MARK } from "../../units/lengthUnits.ts";
import { amountText } from "./lengths.ts";
import { lipStationName } from "./worksheetWords.ts";

/** What points of the body are told with. */
interface BodyPointSpeech {
  readonly format: LengthFormat;
  /** The setup as typed, the variant shown applied. */
  readonly document: unknown;
  readonly setup: Pick<Setup, "truck">;
}

/**
 * A point of a path by where it stands along the truck, as the worksheet calls the assumed lip's: `fender lip over the axle`,
 * `fender lip 5 3/8 in ahead of the axle`; with its number where another of the path reads the same, or where it stands nowhere.
 * @param at of the point, from 0
 */
export function bodyPointWords(
  part: string,
  at: number,
  { format, document, setup }: BodyPointSpeech,
): string {
  const station = isOnAssumedLayout(document) ? lipStationName(bodyPointName(part, at)) : null;
  if (station !== null) return station;
  const path = setup.truck.body.find(({ name }) => name === part);
  const points = path?.kind === "path" ? path.points : [];
  const places = points.map(([x]) => alongWords(x, format));
  const place = places[at];
  if (place === undefined) return `${part}, point ${at + 1}`;
  const isOne = places.indexOf(place) === places.lastIndexOf(place);
  return isOne ? `${part} ${place}` : `${part} ${place}, point ${at + 1}`;
}

/** @param x + = ahead, mm */
function alongWords(x: number, format: LengthFormat): string {
  if (Math.abs(x) < 0.5 * TAPE_MARK.in) return "over the axle";
  return `${amountText(x, format)} ${x > 0 ? "ahead of" : "behind"} the axle`;
}
