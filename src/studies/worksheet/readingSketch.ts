import { arrowLine, type Place, type Sketch, type SketchShape, words } from "../../geometry/sketch.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { ReadingAsk } from "../../setup/worksheet/worksheetLines.ts";
import { SHAPE, sketchPlace } from "./sketchTruck.ts";
import { backdrop, placeIn, SKETCH_SIZE, type SketchView } from "./sketchViews.ts";

/** What is drawn: a reading of the file, or a plumb bob let down from a place. */
export type Sketched = ReadingAsk | { readonly plumb: string };

/** What is written at either end of the tape. */
export interface EndWords {
  readonly from: string;
  readonly to: string;
}

/** mm. Ends of a tape nearer than this in a view are drawn from another side. */
const TOO_NEAR = 60;

/**
 * The sketch of a reading: the truck in thin ink from the side the reading is seen best from, the tape between its two
 * ends, and a word at each. Null = it goes to a place that the sketch truck does not have.
 * @param marks the point that each mark on the floor was let down from
 */
export function readingSketch(
  asked: Sketched,
  ends: EndWords,
  marks: ReadonlyMap<string, string> = new Map(),
): Sketch | null {
  const tape = tapeOf(asked, (name) => placeOf(name, marks));
  if (tape === null) return null;
  const { view, from, to } = tape;
  const [a, b] = [placeIn(view, from), placeIn(view, to)];
  return {
    ...SKETCH_SIZE,
    shapes: [
      ...backdrop(view),
      ...tape.also,
      ...arrowLine("tape", a, b),
      { kind: "ring", look: "tape", at: b, radius: 4.5 },
      ...(tape.isBetween ? [{ kind: "ring", look: "tape", at: a, radius: 4.5 } as const] : []),
      ...endWords(a, b, ends),
    ],
  };
}

interface Tape {
  readonly view: SketchView;
  readonly from: Vec3;
  readonly to: Vec3;
  /** From one place to another; else from a line or the floor. */
  readonly isBetween: boolean;
  readonly also: readonly SketchShape[];
}

type PlaceOf = (name: string) => Vec3 | null;

/** A point of the sketch truck, or the floor under the one that a mark was let down from. */
function placeOf(name: string, marks: ReadonlyMap<string, string>): Vec3 | null {
  const over = marks.get(name);
  const place = sketchPlace(over ?? name);
  return place && over !== undefined ? [place[0], place[1], 0] : place;
}

function tapeOf(asked: Sketched, place: PlaceOf): Tape | null {
  if ("between" in asked) return tapeBetween(asked.between, place);
  if ("angle" in asked) return angleTape(asked.angle);
  if ("size" in asked) return sizeTape(asked.size);
  if ("plumb" in asked) return plumbTape(asked.plumb);
  const name = "height" in asked ? asked.height : "offset" in asked ? asked.offset : asked.ahead;
  const to = place(name);
  if (to === null) return null;
  const [x, y, z] = to;
  if ("height" in asked) {
    const view = isSeenFromFront(name) ? "front" : "side";
    return { view, from: [x, y, 0], to, isBetween: false, also: [] };
  }
  if ("offset" in asked) {
    const from: Vec3 = asked.from === "frame" ? [x, SHAPE.railOutboard, z] : [x, 0, z];
    return { view: "front", from, to, isBetween: false, also: dropLine(from, asked.from) };
  }
  // From above only the left side is shown.
  return name.startsWith("body") || y < 0
    ? { view: "side", from: [0, y, z], to, isBetween: false, also: [] }
    : { view: "top", from: [0, y, z], to, isBetween: false, also: [] };
}

/** From the front, what is behind something else of its sort cannot be told from it. */
function isSeenFromFront(name: string): boolean {
  return !/rearPivot|points\[[^3]\]/.test(name);
}

function tapeBetween([one, other]: readonly [string, string], place: PlaceOf): Tape | null {
  const [from, to] = [place(one), place(other)];
  if (from === null || to === null) return null;
  if (one === other) {
    const right: Vec3 = [from[0], -from[1], from[2]];
    return { view: "track", from: right, to, isBetween: true, also: [] };
  }
  const apart = (view: SketchView) => {
    const [a, b] = [placeIn(view, from), placeIn(view, to)];
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  };
  const views = ["front", "side", "top"] as const;
  const view = views.reduce((best, next) => (apart(next) > 1.15 * apart(best) ? next : best));
  return apart(view) * 4 < TOO_NEAR ? null : { view, from, to, isBetween: true, also: [] };
}

/** From the frame's outer face: the straightedge that carries it down to the height of the tape. */
function dropLine([x, y, z]: Vec3, from: "centerline" | "frame" | undefined): readonly SketchShape[] {
  if (from !== "frame") return [];
  const ends: readonly Vec3[] = [
    [x, y, SHAPE.railTop],
    [x, y, z],
  ];
  return [{ kind: "line", look: "edge", points: ends.map((end) => placeIn("front", end)) }];
}

/** Both sides from the front: over the tread centers on the floor, or over the frame's outer faces. */
function sizeTape(size: string): Tape | null {
  if (size !== "track" && size !== "frameWidth") return null;
  const to: Vec3 =
    size === "track" ? sketchPlace("contactPatch")! : [0, SHAPE.railOutboard, SHAPE.railTop + 40];
  return { view: "track", from: [to[0], -to[1], to[2]], to, isBetween: false, also: [] };
}

/** A plumb bob from a place to its mark on the floor. */
function plumbTape(name: string): Tape | null {
  const from = sketchPlace(name);
  if (from === null) return null;
  const view = isSeenFromFront(name) ? "front" : "side";
  return { view, from, to: [from[0], from[1], 0], isBetween: true, also: [] };
}

/** The arm, and the level line that its angle is read from. */
function angleTape(arm: "lowerArm" | "upperArm"): Tape {
  const from = sketchPlace(`${arm}.frontPivot`)!;
  const to = sketchPlace(`${arm}.ballJoint`)!;
  const level: Vec3 = [to[0], to[1], from[2]];
  return {
    view: "front",
    from,
    to,
    isBetween: false,
    also: [{ kind: "line", look: "edge", points: [placeIn("front", from), placeIn("front", level)] }],
  };
}

/** px per letter at the size that sketches are written in; a little wide. */
const LETTER = 6.1;

/** A word at either end: beyond it of an upright tape; over a level one, or one over and one under where that is too short. */
function endWords(a: Place, b: Place, ends: EndWords): readonly SketchShape[] {
  const isUpright = Math.abs(b[1] - a[1]) > Math.abs(b[0] - a[0]);
  const isShort = Math.abs(b[0] - a[0]) < (LETTER * (ends.from.length + ends.to.length)) / 2 + 12;
  const side = (end: Place, other: Place, isUnder: boolean) => {
    if (isUpright) return end[1] > other[1];
    return isShort && isUnder;
  };
  return [
    wordsAt(a, ends.from, isUpright, side(a, b, false)),
    wordsAt(b, ends.to, isUpright, side(b, a, true)),
  ];
}

function wordsAt(end: Place, text: string, isUpright: boolean, isUnder: boolean): SketchShape {
  const { width, height } = SKETCH_SIZE;
  const half = (text.length * LETTER) / 2;
  const y = end[1] + (isUnder ? (isUpright ? 15 : 20) : -10);
  return words(
    text,
    [Math.min(Math.max(end[0], half + 2), width - half - 2), Math.min(Math.max(y, 12), height - 4)],
    "middle",
    true,
  );
}

/** mm. Where the stick lies on the sketch truck. */
const STICK = { height: 455, ahead: 560 } as const;

/** The lip from the left with the stick along it: a tape up to each station. @param edge what the stick is called */
export function stickSketch(edge: string): Sketch {
  const on = ([x, y]: readonly [number, number]): Vec3 => [x, 0, y];
  const place = (x: number, z: number) => placeIn("side", on([x, z]));
  const ends = [place(STICK.ahead, STICK.height), place(-STICK.ahead, STICK.height)] as const;
  return {
    ...SKETCH_SIZE,
    shapes: [
      ...backdrop("side"),
      { kind: "line", look: "edge", points: ends },
      ...SHAPE.lip.flatMap(([x, , z]) => {
        const [from, to] = [place(x, STICK.height), place(x, z)];
        return Math.abs(to[1] - from[1]) < 8
          ? [{ kind: "ring", look: "tape", at: to, radius: 4.5 } as const]
          : [...arrowLine("tape", from, to), { kind: "ring", look: "tape", at: to, radius: 4.5 } as const];
      }),
      words(edge, [ends[1][0], ends[1][1] + 16], "end", true),
    ],
  };
}
