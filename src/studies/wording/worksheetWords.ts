import { bodyPointName, bodyPointOf } from "../../setup/blocks/readings/readingPoint.ts";
import { isSameJson } from "../../setup/editing/writtenValues.ts";
import {
  LIP,
  LIP_STATIONS,
  type ReadingAsk,
  WORKSHEET_LINES,
  type WorksheetPlace,
} from "../../setup/worksheet/worksheetLines.ts";
import type { LineState } from "../../setup/worksheet/worksheetState.ts";
import { formatLength } from "../../units/formatLength.ts";
import { ASSUMED_LIP_POINTS } from "../measure/assumedTruck.ts";
import { GAUGE_LINES, type LineWords, markName } from "./gaugeWords.ts";

const PLACES: Readonly<Record<WorksheetPlace, string>> = {
  outside: "Beside the truck, wheels on, level floor",
  wheel: "The wheel, off the truck",
  hub: "At the hub, wheel off",
  under: "Under the truck",
  moved: "The wheel moved up and down",
};

/** Where somebody is for a run of lines. */
export function worksheetPlaceWords(place: WorksheetPlace): string {
  return PLACES[place];
}

const STATIONS: ReadonlyMap<number, string> = new Map([
  [0, "at its front end"],
  [LIP_STATIONS.ahead, "ahead of the axle"],
  [LIP_STATIONS.axle, "over the axle"],
  [LIP_STATIONS.behind, "behind the axle"],
  [ASSUMED_LIP_POINTS.size - 1, "at its rear end"],
]);

/** What a point of the assumed lip is called inside a sentence, as the list's lines call it; null = it has no name of its own. */
export function lipStationName(point: string): string | null {
  const { part, at } = bodyPointOf(point) ?? {};
  const where = part === LIP ? STATIONS.get(at ?? -1) : undefined;
  return where === undefined ? null : `${LIP} ${where}`;
}

/** How far from the axle line a point of the assumed lip is, in both units: it is struck before it is measured. */
function stationText(at: number): string {
  const mm = Math.abs(ASSUMED_LIP_POINTS.get(bodyPointName(LIP, at))?.[0] ?? 0);
  return `${formatLength(mm, { units: "in" })} (${formatLength(mm, { units: "mm", decimals: 0 })})`;
}

export const LINES: Readonly<Record<string, LineWords>> = {
  tireSize: { name: "Tire size", how: "As it is written on the sidewall, such as P235/70R15." },
  wheelCenterHeight: {
    name: "Wheel center, up from the floor",
    how: "From the floor to the middle of the hub, straight up, the truck standing as you want it measured.",
  },
  lipHeight: {
    name: "Fender lip over the axle, up from the floor",
    how: "From the floor straight up to the lowest edge of the lip, over the middle of the hub.",
  },
  lipOffset: {
    name: "Fender lip over the axle, out from the centerline",
    how: "Drop a plumb bob from the lip and mark the floor; measure from the truck's centerline to the mark, square across.",
  },
  lipFrontHeight: {
    name: "Fender lip ahead of the axle, up from the floor",
    how: `Chalk a station ${stationText(LIP_STATIONS.ahead)} ahead of the axle line; from the floor straight up to the lip over it.`,
  },
  lipFrontOffset: {
    name: "Fender lip ahead of the axle, out from the centerline",
    how: `Plumb bob from the lip over the same station, ${stationText(LIP_STATIONS.ahead)} ahead; square across to the centerline.`,
  },
  lipRearHeight: {
    name: "Fender lip behind the axle, up from the floor",
    how: `Chalk a station ${stationText(LIP_STATIONS.behind)} behind the axle line; from the floor straight up to the lip over it.`,
  },
  lipRearOffset: {
    name: "Fender lip behind the axle, out from the centerline",
    how: `Plumb bob from the lip over the same station, ${stationText(LIP_STATIONS.behind)} behind; square across to the centerline.`,
  },
  rimToLip: {
    name: "Rim to fender lip",
    how: "From the top edge of the rim straight to the lip above it: it checks three other readings at once.",
  },
  track: {
    name: "Track",
    how: "On the floor, from the middle of one front tread to the middle of the other, wheels straight ahead.",
  },
  rimWidth: {
    name: "Rim width",
    how: "Between the rim's flanges, where the tire sits; it is also stamped in the wheel (15 × 8 is 8 in wide).",
  },
  backspacing: {
    name: "Backspacing",
    how: "Wheel face down, a straightedge across the inboard rim: from the straightedge down to the mounting face.",
  },
  hubFace: {
    name: "Hub-face distance",
    how: "Stand a straightedge along the two ball joint centers. At the height of the middle of the pin (the spindle that the hub turns on), measure from it outward, the way the pin points, to the face the wheel bolts against.",
  },
  pinAngle: {
    name: "Pin angle",
    how: "The angle finder on the hub face gives camber; on the line of the ball joints kingpin inclination. The two together.",
  },
  span: {
    name: "Lower ball joint to upper ball joint",
    how: "Straight from the center of one ball to the center of the other: from stud to stud, at the same place of each.",
  },
  rodToLower: {
    name: "Outer tie rod end to lower ball joint",
    how: "Straight from ball center to ball center.",
  },
  rodToUpper: {
    name: "Outer tie rod end to upper ball joint",
    how: "Straight from ball center to ball center.",
  },
  lowerJointHeight: {
    name: "Lower ball joint, up from the floor",
    how: "Straight up from the floor to the center of the ball.",
  },
  lowerJointOffset: {
    name: "Lower ball joint, out from the centerline",
    how: "Plumb bob from the ball joint to the floor; square across to the centerline.",
  },
  lowerFrontHeight: {
    name: "Lower arm, front pivot, up from the floor",
    how: "Straight up to the middle of the pivot bolt, at the middle of its bushing.",
  },
  lowerFrontOffset: {
    name: "Lower arm, front pivot, out from the centerline",
    how: "Plumb bob from the middle of the bushing; square across to the centerline.",
  },
  lowerRearHeight: {
    name: "Lower arm, rear pivot, up from the floor",
    how: "Straight up to the middle of the pivot bolt, at the middle of its bushing.",
  },
  upperJointOffset: {
    name: "Upper ball joint, out from the centerline",
    how: "Plumb bob from the ball joint past the arm to the floor; square across to the centerline.",
  },
  upperFrontHeight: {
    name: "Upper arm, front pivot, up from the floor",
    how: "Straight up to the middle of the pivot, at the middle of its bushing.",
  },
  upperFrontOffset: {
    name: "Upper arm, front pivot, out from the centerline",
    how: "Plumb bob from the middle of the bushing; square across to the centerline.",
  },
  upperRearHeight: {
    name: "Upper arm, rear pivot, up from the floor",
    how: "Straight up to the middle of the pivot, at the middle of its bushing.",
  },
  rodInnerHeight: {
    name: "Inner tie rod end, up from the floor",
    how: "Wheels straight ahead. Straight up to the center of the ball, under its boot.",
  },
  rodInnerOffset: {
    name: "Inner tie rod end, out from the centerline",
    how: "Wheels straight ahead. Plumb bob from the ball; square across to the centerline.",
  },
  rodInnerAhead: {
    name: "Inner tie rod end, ahead of the axle line",
    how: "Along the floor from the axle line to the plumb mark; behind the axle line it is less than 0.",
  },
  bump: {
    name: "Full bump",
    how: "How far the wheel rises from where the truck was measured until its bump stop is flat.",
  },
};

/** What is said of a line of a worksheet. */
export function lineWords({ line, ask, gauge, path, again }: LineState): LineWords {
  if (gauge !== null) return GAUGE_LINES[gauge];
  const words = line ? LINES[line.key] : undefined;
  const { name, how } =
    words ?? (ask ? { name: askWords(ask), how: askHow(ask) } : { name: path.join("."), how: "" });
  return again === 0 ? { name, how } : { name: `${name}, read again`, how };
}

/** What a reading of a worksheet is called, by its place in the file. */
export function readingName(states: readonly LineState[], at: number): string {
  const state = states.find(({ path }) => path[0] === "readings" && path[1] === at);
  return state ? lineWords(state).name : `reading ${at + 1}`;
}

/** What a reading is called: as the worksheet's list calls it, where that has it. */
export function askName(ask: ReadingAsk): string {
  const line = WORKSHEET_LINES.find(({ asks }) => "reading" in asks && isSameJson(asks.reading, ask));
  return (line && LINES[line.key]?.name) ?? askWords(ask);
}

/** A reading in words: `Upper arm, rear pivot, ahead of the axle line`. */
function askWords(ask: ReadingAsk): string {
  const { from, to } = readingEndWords(ask);
  const words = (() => {
    if ("between" in ask) return from === to ? `${to}, left to right` : `${from} to ${to}`;
    if ("height" in ask) return `${to}${numberOf(ask.height)}, up from the floor`;
    if ("offset" in ask) return `${to}${numberOf(ask.offset)}, out from the ${from}`;
    if ("ahead" in ask) return `${to}${numberOf(ask.ahead)}, ahead of the axle line`;
    if ("angle" in ask) return `${to}, angle against level`;
    return SIZES[ask.size] ?? ask.size;
  })();
  const side = ask.side === "right" ? ", right side" : "";
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${side}`;
}

/** Which point of a body part it is: `, point 5`; "" where it has but one name. */
function numberOf(point: string): string {
  const at = bodyPointOf(point)?.at ?? null;
  return at === null ? "" : `, point ${at + 1}`;
}

/** How a reading is taken that no list has. */
function askHow(ask: ReadingAsk): string {
  if ("between" in ask) return "Straight from center to center.";
  if ("height" in ask) return "Straight up from the floor to its center.";
  if ("offset" in ask)
    return ask.from === "frame"
      ? "A straightedge upright against the frame's outer face; square out to the center. Inboard of the face is less than 0."
      : "Plumb bob from its center to the floor; square across to the centerline.";
  if ("ahead" in ask)
    return "Plumb bob from its center; along the floor from the axle line. Behind the axle line is less than 0.";
  if ("angle" in ask)
    return "An angle finder from the pivots' line to the ball joint, seen from the front; more than 0 where the ball joint is lower.";
  return SIZE_HOW[ask.size] ?? "";
}

const SIZE_HOW: Readonly<Record<string, string>> = {
  wheelbase: "Hub to hub along the truck, wheels straight ahead.",
  frameWidth: "Over the frame's outer faces, at the front axle.",
  "tire.diameter":
    "A straightedge over the top of the tire, level; from the floor to it, the wheel off the ground.",
  "tire.sectionWidth": "The calipers over both sidewalls at their widest.",
  "tire.treadWidth": "Across the tread, from shoulder to shoulder.",
  "tire.shoulderDrop": "A straightedge across the crown of the tread; down from it to the tread's edge.",
  "wheel.backspacing": "A straightedge across the inboard rim; from it down to the mounting face.",
  "wheel.lipToLip": "Over the rim's lips, outside to outside.",
};

const SIZES: Readonly<Record<string, string>> = {
  wheelbase: "wheelbase",
  track: "track",
  frameWidth: "frame, outer face to outer face",
  "tire.diameter": "tire diameter, by caliper or over the tread",
  "tire.sectionWidth": "tire section width, by caliper",
  "tire.treadWidth": "tread width",
  "tire.shoulderDrop": "shoulder of the tread below its crown",
  "wheel.backspacing": "backspacing, by straightedge",
  "wheel.lipToLip": "rim, lip to lip",
};

const POINTS: Readonly<Record<string, string>> = {
  "upperArm.frontPivot": "upper arm, front pivot",
  "upperArm.rearPivot": "upper arm, rear pivot",
  "upperArm.ballJoint": "upper ball joint",
  "lowerArm.frontPivot": "lower arm, front pivot",
  "lowerArm.rearPivot": "lower arm, rear pivot",
  "lowerArm.ballJoint": "lower ball joint",
  "steering.innerEnd": "inner tie rod end",
  tieRodOuter: "outer tie rod end",
  wheelCenter: "wheel center",
  "steering.pitman.pivot": "pitman shaft",
  "steering.pitman.end": "pitman arm end",
  "steering.idler.pivot": "idler shaft",
  "steering.idler.end": "idler arm end",
  contactPatch: "tire on the floor",
  rimTop: "top of the rim",
  rimBottom: "bottom of the rim",
  rimFront: "front of the rim",
  rimRear: "rear of the rim",
};

/** What is written at the two ends of a reading's tape. */
export function readingEndWords(ask: ReadingAsk): { readonly from: string; readonly to: string } {
  if ("between" in ask) return { from: pointWord(ask.between[0]), to: pointWord(ask.between[1]) };
  if ("height" in ask) return { from: "floor", to: pointWord(ask.height) };
  if ("offset" in ask)
    return { from: ask.from === "frame" ? "frame's outer face" : "centerline", to: pointWord(ask.offset) };
  if ("ahead" in ask) return { from: "axle line", to: pointWord(ask.ahead) };
  if ("angle" in ask) return { from: "level", to: ask.angle === "lowerArm" ? "lower arm" : "upper arm" };
  return ask.size === "track"
    ? { from: "tread center", to: "tread center" }
    : { from: "outer face", to: "outer face" };
}

/** What a point that readings go to is called inside a sentence. */
export function pointWord(name: string): string {
  return POINTS[name] ?? bodyPointOf(name)?.part ?? markName(name);
}
