import type { Vec3 } from "../../geometry/vec.ts";
import type { MeshUnit } from "../../setup/types/truckTypes.ts";
import type { Gauge } from "../../setup/worksheet/worksheetState.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { UnitGuess } from "../worksheet/scanMove.ts";
import { amountText, lengthText } from "./lengths.ts";
import { listWords } from "./nameWords.ts";

/** What is said of a line of the worksheet. */
export interface LineWords {
  readonly name: string;
  /** Where each end of the tape is held, in a sentence or two. */
  readonly how: string;
}

/** Said of a mesh file that nobody has put anywhere yet. */
export const MESH_UNPLACED =
  "Not placed yet: it stands where its own file has its zero, and gaps to it mean nothing until it is. Match its points with the truck’s, or turn and move it.";

/** Ways to read more than a worksheet asks for by itself. */
export const GAUGE_WAYS = {
  stick: {
    name: "Fender lip along a level stick",
    about: "Height and inset at seven stations: the whole arch.",
  },
  photo: { name: "Fender arch from a side photo", about: "Traced over a picture that stays on this device." },
  tire: {
    name: "Tire by calipers",
    about: "Diameter, section, tread width and shoulder drop in place of its size.",
  },
  wheel: { name: "Wheel by straightedge", about: "Lip to lip and backspacing." },
  plumb: {
    name: "Plumb bob mark on the floor",
    about: "A point let down to the floor, and tapes from mark to mark.",
  },
  scan: { name: "Scan on matched points", about: "A mesh put in place, with how far each point is off." },
} as const;

/** What a reading of several numbers is called, and how it is taken. */
export const GAUGE_LINES: Readonly<Record<Gauge, LineWords>> = {
  stick: {
    name: "Fender lip at stations along a level stick",
    how: "A straight stick along the truck beside the wheel, level, on blocks. At each station measure from the stick's upper edge up to the lip, and from its inboard edge in to it. Ahead: along the stick from over the axle; behind is less than 0. Leave out what you cannot reach.",
  },
  plumb: {
    name: "Plumb bob",
    how: "Let the bob hang still, its line at the point's center, and mark the floor under it. Tapes along the floor are easier than tapes under the truck.",
  },
};

/** Columns of a stick's stations. */
export const STATION_COLUMNS = ["ahead", "up", "in"] as const;

/** Where a stick lies. */
export const STICK_WORDS = {
  offset: "Stick's inboard edge, out from the centerline",
  height: "Stick's upper edge, up from the floor",
} as const;

/** A station of a stick: `front end`, `over the axle`, or which it is. */
export function stationName(at: number, count: number): string {
  if (at === 0) return "front end";
  if (at === count - 1) return "rear end";
  return 2 * at === count - 1 ? "over the axle" : `station ${at + 1}`;
}

/** How well matched points of a scan go together. @param residuals of each, mm */
export function scanFitSentence(residuals: readonly number[], format: LengthFormat): string {
  const each = listWords(residuals.map((mm, i) => `point ${i + 1} by ${amountText(mm, format)}`));
  return `Fitted by least squares, the matched points come out off their places on the truck: ${each}. A point an inch off is the wrong point, or the scan is in another unit.`;
}

/** What a mark on the floor is called. */
export function markName(mark: string): string {
  return `mark ${mark}`;
}

const UNIT_WORDS: Readonly<Record<MeshUnit, string>> = {
  in: "inches",
  mm: "millimeters",
  cm: "centimeters",
  m: "meters",
  ft: "feet",
};

/** A mesh in one of the units, as a choice: `inches: 60 in × 24 in`, to whole inches or centimeters. */
export function unitChoiceText({ unit, sides }: UnitGuess, { units }: LengthFormat): string {
  const [step, word] = units === "in" ? [25.4, "in"] : [10, "cm"];
  const [long, wide] = sides.map((side) => Math.round(side / step).toLocaleString("en-US"));
  return `${UNIT_WORDS[unit]}: ${long} ${word} × ${wide} ${word}`;
}

/** Why a unit is likely, as a mark beside it. */
export function unitMark({ isFender }: UnitGuess): string {
  return isFender ? "✓ as large as a fender" : "✓ beside a front wheel";
}

/** Asks in which unit a mesh file is. @param guesses likeliest first */
export function unitQuestion(guesses: readonly UnitGuess[], unit: MeshUnit): string {
  const likely = guesses.filter(({ isLikely }) => isLikely);
  if (likely.length === 0)
    return "In no unit is this mesh the size of a fender or a front clip. Which unit is it in?";
  const words = likely.map((one) => UNIT_WORDS[one.unit]).join(" or ");
  const isLarge = likely.every(({ isFender }) => isFender);
  const said = isLarge
    ? `Its size says ${words}: as large as a fender or a front clip.`
    : `Its size and place say ${words}: as large as a fender, or beside a front wheel.`;
  return likely.some((one) => one.unit === unit)
    ? `${said} Read as ${UNIT_WORDS[unit]} now; is that right?`
    : `${said} Read as ${UNIT_WORDS[unit]} now: that looks wrong.`;
}

/** What the stage asks for while a point is picked. @param what `point 2`, or what a point of the truck is called */
export const PICK_TEXTS = {
  scan: (what: string) => `Press on the scan where ${what} is. Drag turns it.`,
  keys: "By keys: arrows move the cross over the scan (Shift: finer), Enter takes the place, Esc ends it.",
  finger: "Tap it: the cross goes there and is moved with the buttons until the place is taken.",
  cursor: "Cross on the scan: arrow keys move it, Shift finer, Enter takes the place",
  ways: [
    { key: "ArrowLeft", sign: "←", name: "Cross to the left" },
    { key: "ArrowUp", sign: "↑", name: "Cross up" },
    { key: "ArrowDown", sign: "↓", name: "Cross down" },
    { key: "ArrowRight", sign: "→", name: "Cross to the right" },
  ],
  take: "Take this place",
  truck: (what: string) => `Press the place on the truck that is ${what}.`,
  end: "Stop picking",
} as const;

/** Where the cross on a scan lies, or that the scan goes no farther that way. @param at vehicle axes, mm */
export function crossWords([x, y, z]: Vec3, isAtEdge: boolean, format: LengthFormat): string {
  const place = [
    `${amountText(Math.abs(x), format)} ${x < 0 ? "behind" : "ahead of"} the axle line`,
    Math.abs(y) < 0.5
      ? "on the centerline"
      : `${amountText(Math.abs(y), format)} out to the ${y < 0 ? "right" : "left"}`,
    `${lengthText(z, format)} up`,
  ].join(", ");
  return isAtEdge ? `No more of the scan that way. ${place}.` : `${place}.`;
}

/** A ± of a scan as a whole has no point it is of. */
export const MESH_WITHIN =
  "A ± on how a mesh is turned, moved or scaled is not drawn: it belongs to the whole part, not to one point; type it at the matched points or corners, where it is.";

/** How far a matched point lies from its place on the truck, as the scan stands. @param mm null = not known yet */
export function matchOffText(mm: number | null, format: LengthFormat): string {
  return mm === null ? "not matched yet" : `${amountText(mm, format)} off`;
}

/** How a scan stands by its matched points as it stands now. @param offs of each that is whole, mm */
export function matchesSentence(offs: readonly number[], format: LengthFormat): string {
  if (offs.length < 3)
    return `${offs.length} of 3 points matched. Pick at least three that are far apart and not in line; more of them check each other.`;
  const worst = Math.max(...offs);
  const rms = Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / offs.length);
  return `As it stands the matched points are ${amountText(rms, format)} off overall (root mean square), ${amountText(worst, format)} at worst. A point an inch off is the wrong point, or the scan is in another unit.`;
}

/** What stands at points of the truck that are none of the setup's own. */
export const PLACE_WORDS = {
  zero: "floor under the axle line, at the centerline",
  wheelCenter: "wheel center",
  contactPatch: "floor under the wheel center",
  tieRodOuter: "outer tie rod end",
} as const;

/** Points of the truck read off a scan. */
export const POINTS_OFF_SCAN = {
  title: "Take points of the truck off this scan",
  how: "Once the scan stands in its place: choose a point, press it on the scan, and it is the truck's from then on.",
} as const;
