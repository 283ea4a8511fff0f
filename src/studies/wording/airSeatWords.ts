import type { LimitsSetup } from "../../setup/types/limitsTypes.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { AirSeat } from "../air/airSeat.ts";
import { amountText } from "./lengths.ts";
import { travelText } from "./poseWords.ts";

/** What a truck's seat needs of its setup. */
export type SeatLimits = { readonly limits: Pick<LimitsSetup, "bumpStop"> | null };

/** Where a truck comes down to with empty bags and on what, as what is said of it: `sits on its bump stop at 3 1/2 in bump`. */
export function seatClause({ travel, on }: AirSeat, { limits }: SeatLimits, format: LengthFormat): string {
  const at = travelText(travel, format);
  switch (on) {
    case "bump stop":
      return `sits on its bump stop at ${at}`;
    case "air spring compression":
      return `sits on the air spring’s own compression limit at ${at}`;
    case "shock compression":
      return `sits on its shock, compressed to its end, at ${at}`;
    case "travel end":
      return `comes down at least to ${at}, where the setup’s travel ends: ${noStopWords(travel, limits?.bumpStop ?? null, format)}`;
    case "reach":
      return `comes down to ${at}, as far as the linkage follows, and meets no stop before`;
  }
}

/** @param travel where the setup's travel ends @param bumpStop mm, null = not given */
function noStopWords(travel: number, bumpStop: number | null, format: LengthFormat): string {
  if (bumpStop === null) return "the setup gives no bump stop";
  return `its bump stop is ${amountText(bumpStop - travel, format)} farther down`;
}
