import type { Setup } from "../../setup/types/types.ts";
import { sleeveTurns } from "../alignment/onTieRod.ts";

const QUARTERS = ["", "1/4", "1/2", "3/4"] as const;

/** How far a tie rod's sleeve is turned for a change, to the nearest quarter: `1 3/4 turns of the sleeve`; "" = its thread is not given. */
export function sleeveWords(
  change: number,
  { alignment: { sleeveThread } }: Pick<Setup, "alignment">,
): string {
  if (sleeveThread === undefined) return "";
  const quarters = Math.round(4 * Math.abs(sleeveTurns(change, sleeveThread)));
  if (quarters === 0) return "less than an eighth of a turn of the sleeve";
  const [whole, part] = [Math.floor(quarters / 4), QUARTERS[quarters % 4]!];
  const number = [whole === 0 ? "" : String(whole), part].filter((text) => text !== "").join(" ");
  return `${number} ${quarters <= 4 ? "turn" : "turns"} of the sleeve`;
}
