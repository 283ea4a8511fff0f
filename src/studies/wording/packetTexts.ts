import type { Setup } from "../../setup/types/types.ts";
import { setupHeading } from "./answerWords.ts";
import { heightText, lockText } from "./poseWords.ts";
import { truckName } from "./truckName.ts";

/** Said with the link to a comparison. */
export const COMPARISON_LINK =
  "This link opens the counter with A, B, the height and the hub face tried as they are here. It holds the truck itself; no server sees it.";

/**
 * What stands beside the code to be scanned; or why there is none.
 * @param characters of the link @param isDrawn a camera reads it off paper @param trucks that are told
 */
export function codeText(characters: number, isDrawn: boolean, trucks = 2): string {
  return isDrawn
    ? `Scan to open ${trucks === 1 ? "this truck" : "this comparison"}.`
    : `No code to scan: the link has ${characters} characters, more than a camera reads off paper. Send the link instead.`;
}

/** Of which truck a list of changes was worked out, and what was chosen of it. @param of null = the setup without a variant */
export function chosenSentence(of: string | null, title: string): string {
  return `Worked out for the ${of === null ? truckName(of) : `variant “${of}”`}, before the change. Chosen: ${title}.`;
}

/** The pages of a print packet, by what stands on them. */
export const PACKET_PAGES = {
  sheet: "customer sheet",
  aligning: "alignment card",
  limits: "limits",
  air: "air springs",
  floor: "stance and floor",
  map: "map of height and steering",
  readings: "what was read and what is assumed",
  choose: "odds and what to change",
} as const;

/** What a packet has in it, in the order of its pages. @param titles of the pages there are */
export function packetContents(titles: readonly string[]): string {
  return titles.join(", ");
}

export type PacketPageName = keyof typeof PACKET_PAGES;

/** What a page of a packet is called: the last one by what of it there is. */
export function pageTitle(
  page: PacketPageName,
  chosen: { readonly hasOdds: boolean; readonly hasChanges: boolean },
): string {
  if (page !== "choose" || chosen.hasOdds === chosen.hasChanges) return PACKET_PAGES[page];
  return chosen.hasOdds ? "odds" : "what to change";
}

/** What stands at the head of a page: all of them begin alike. @param title as `pageTitle` has it */
export function pageHeading(title: string): string {
  return `${title.charAt(0).toUpperCase()}${title.slice(1)}`;
}

/** A packet's first line: whose it is, of which truck, from when, and what is in it. @param shop "" = not told */
export function coverLine(shop: string, truck: string, date: string, titles: readonly string[]): string {
  const inIt = `In this packet: ${packetContents(titles)}.`;
  return [shop, truck, date, inIt].filter((part) => part !== "").join(" · ");
}

/** Over printed plots: of which truck, at which pose, from when. @param travel mm @param steer share of full lock, + left */
export function plottedLine(setup: Setup, travel: number, steer: number, date: string): string {
  const pose = `blue line: ${heightText(travel, setup)}, ${lockText(steer)}`;
  return [setupHeading(setup), pose, date].join(" · ");
}

/** Under a sheet's table: how two trucks are told apart, and what a word of it means. @param trucks that are told */
export function sheetKey(trucks: number): string {
  const both = "A is drawn solid, B dashed; below the front view are their hub-face distances. ";
  return `${trucks === 1 ? "" : both}As measured is the height the truck was measured at, travel 0.`;
}

/** Over what is told of a truck by itself, below a list that it was chosen from. */
export const AS_IT_IS = "With the change, as it is now";

/** Said on a page whose answer was not there yet. */
export const STILL_WORKING =
  "Not worked out yet when this was printed: open the print packet and wait for it.";
