import { lengthText } from "../../../studies/wording/lengths.ts";
import {
  type GapLabel,
  gapLabel,
  isOverlap,
  PICTURE_NAMES,
  underWords,
} from "../../../studies/wording/pictureTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { BodyDrawing } from "./bodyDrawing.ts";
import { type DrawingFrame, dimensionAt, FOOT_ROOM, onPage } from "./drawingFrame.ts";
import { brokenLines, lineRoom } from "./letterRoom.ts";
import type { Pictured } from "./pictures.ts";
import { type PagePoint, placeTexts } from "./placeTexts.ts";
import { leftmostIn } from "./seenIn.ts";
import { type DrawingView, dimensionShift, type SheetPoint } from "./wheelDrawing.ts";

/** A text of a picture, with what it is about. Places in px from the frame's corner, right and down. */
export interface PlacedText {
  readonly lines: readonly string[];
  /** Where its lines begin; or end, of those left of what they name. */
  readonly x: number;
  /** The middle of all its lines. */
  readonly y: number;
  /** What it points at. */
  readonly to: PagePoint;
}

/** The label of a gap. */
export interface PlacedGap extends PlacedText {
  readonly letter: Pictured["letter"];
  readonly word: GapLabel["word"];
  /** They overlap there, which is filled on the picture. */
  readonly isIn: boolean;
  /** The gap's other end. */
  readonly onRing: PagePoint;
}

/** All that is written on a picture: what things are called at its left, gaps at its right, dimensions below. */
export interface PictureLayout {
  readonly names: readonly PlacedText[];
  readonly gaps: readonly PlacedGap[];
  /** Of each truck in order: the text of its hub face dimension; none from above. */
  readonly dimensions: readonly PlacedText[];
}

/** Pixels. Letters of names are smaller than those of gaps and dimensions. */
export const FONT = { name: 13.5, gap: 14 } as const;
/** Of a line, in heights of its letters. */
export const LINE = { name: 1, gap: 1.15 } as const;
/** Pixels between the lines of one text and of the next. */
const BETWEEN = { name: 4, gap: 7 } as const;
/** Pixels between a text's mark, or a dimension, and the text. */
const AFTER_MARK = 18;
const AFTER_DIMENSION = 10;
/** Pixels kept free at the frame's edge. */
const EDGE = 4;
const MOST_LINES = 2;
/** Pixels from a gap's mark that no name points at. */
const MARK = 16;

/**
 * Where all that is written on a picture stands: no two texts over each other, none over what it names, none past the frame, no two
 * leaders crossed. What is drawn is kept out of both columns of texts. Body parts past what the column holds go unnamed, those far
 * from the hub face first.
 */
export function pictureLayout(
  view: DrawingView,
  pictured: readonly Pictured[],
  body: readonly BodyDrawing[],
  frame: DrawingFrame,
  format: LengthFormat,
): PictureLayout {
  const dimensions = view === "front" ? dimensionsOf(pictured, frame, format) : [];
  const [first] = pictured;
  return {
    names: first ? namesOf(view, first, body, frame) : [],
    gaps: gapsOf(view, pictured, dimensions, frame, format),
    dimensions,
  };
}

interface Named {
  readonly text: string;
  readonly to: PagePoint;
}

/** What things are called, by the first truck. A body part that a gap is marked to is named there. */
function namesOf(
  view: DrawingView,
  { drawing, mark }: Pictured,
  body: readonly BodyDrawing[],
  frame: DrawingFrame,
): readonly PlacedText[] {
  const { hubFace, hubFaceLine, upperBallJoint, lowerBallJoint, wheel, cut, contactPatch, gap } = drawing;
  const page = onPage(frame);
  const own: Named[] = [];
  const add = (text: string, to: SheetPoint) => own.push({ text, to: page(to) });
  if (cut[0]) add(PICTURE_NAMES.tire, leftmostBeside(cut[0], gap?.onPart ?? null, MARK * frame.perPx));
  if (view === "front") {
    // Its foot: a line to its middle would pass over the ball joints.
    add(PICTURE_NAMES.wheel, between(wheel[0]!, wheel[3]!, 0.98));
    add(PICTURE_NAMES.hubFace, hubFaceLine[0]);
    add(PICTURE_NAMES.ballJointLine, between(upperBallJoint, lowerBallJoint, 0.7));
    const [, floor] = page(contactPatch);
    own.push({ text: PICTURE_NAMES.floor, to: [frame.inner.left + 6, floor] });
  }
  const { inner } = frame;
  const column = {
    x: frame.names + 3,
    top: EDGE,
    foot: frame.size.height - (view === "front" ? EDGE : FOOT_ROOM),
  };
  const pieces = (text: string) => brokenLines(text, frame.names - EDGE, FONT.name, MOST_LINES);
  const heightOf = (lines: readonly string[]) => lines.length * FONT.name * LINE.name + BETWEEN.name;
  const [fu, fv] = page(hubFace);
  const parts = body
    .flatMap(({ name, cuts }): Named[] => {
      if (name === mark?.entry.part) return [];
      // What is cut beside the picture is not on it.
      const to = leftmostIn(
        cuts.map(({ points, isClosed }) => ({ points: points.map(page), isClosed })),
        inner,
      );
      return to ? [{ text: name, to }] : [];
    })
    .sort((a, b) => Math.hypot(a.to[0] - fu, a.to[1] - fv) - Math.hypot(b.to[0] - fu, b.to[1] - fv));
  const texts: (Named & { readonly lines: readonly string[]; readonly height: number })[] = [];
  let left = column.foot - column.top;
  for (const one of [...own, ...parts]) {
    const lines = pieces(one.text);
    const height = heightOf(lines);
    if (height > left) continue;
    left -= height;
    texts.push({ ...one, lines, height });
  }
  const places = placeTexts(texts, column);
  return texts.map(({ lines, to }, i) => ({ lines, to, x: frame.names, y: places[i]! }));
}

function gapsOf(
  view: DrawingView,
  pictured: readonly Pictured[],
  dimensions: readonly PlacedText[],
  frame: DrawingFrame,
  format: LengthFormat,
): readonly PlacedGap[] {
  const page = onPage(frame);
  const { width, height } = frame.size;
  const x = frame.labels + AFTER_MARK;
  const room = width - EDGE - x;
  const textsIn = (mostLines: number) =>
    pictured.flatMap(({ letter, drawing: { gap }, mark, allowance }) => {
      if (!mark || !gap) return [];
      const { word, said, amount } = gapLabel(mark.entry.gap, allowance, format);
      const pieces = (text: string, most: number) => brokenLines(text, room, FONT.gap, most, true);
      const part = pieces(`${letter} ${gap.part}`, mostLines);
      // An amount is never broken in itself.
      const under = view === "above" ? underWords(mark.entry) : "";
      const told = `${said} ${amount.replaceAll(" ", "\u00a0")} ${under}`.trimEnd();
      const lines = [...part, ...pieces(told, MOST_LINES)];
      const tall = lines.length * FONT.gap * LINE.gap + BETWEEN.gap;
      const isIn = isOverlap(mark.entry.gap);
      return [{ letter, word, isIn, lines, height: tall, to: page(gap.onPart), onRing: page(gap.onRing) }];
    });
  // A dimension that reaches into the column ends it.
  const reaching = dimensions.filter((one) => one.x + lineRoom(one.lines[0]!, FONT.gap) >= frame.labels);
  const foot = Math.min(
    height - (view === "front" ? EDGE : FOOT_ROOM),
    ...reaching.map(({ y }) => y - 0.5 * FONT.gap * LINE.gap),
  );
  const whole = textsIn(MOST_LINES);
  const isShort = whole.reduce((sum, one) => sum + one.height, EDGE) > foot;
  const texts = isShort ? textsIn(1) : whole;
  const places = placeTexts(texts, { x: frame.labels, top: EDGE, foot });
  return texts.map(({ height: _, ...one }, i) => ({ ...one, x, y: places[i]! }));
}

function dimensionsOf(
  pictured: readonly Pictured[],
  frame: DrawingFrame,
  format: LengthFormat,
): readonly PlacedText[] {
  const page = onPage(frame);
  return pictured.map(({ letter, drawing, hubFace }, i) => {
    const [du, dv] = dimensionShift(drawing, dimensionAt(frame, i));
    const to = page([drawing.hubFace[0] + du, drawing.hubFace[1] + dv]);
    const text = `${letter} ${lengthText(hubFace, format)}`;
    const most = frame.size.width - EDGE - lineRoom(text, FONT.gap);
    return { lines: [text], x: Math.min(to[0] + AFTER_DIMENSION, most), y: to[1], to };
  });
}

/** The leftmost of points that stand above or below a mark, which would be taken for what is named; mm. */
function leftmostBeside(points: readonly SheetPoint[], mark: SheetPoint | null, far: number): SheetPoint {
  const beside = points.filter(([, v]) => mark === null || Math.abs(v - mark[1]) > far);
  return (beside.length > 0 ? beside : points).reduce((least, point) =>
    point[0] < least[0] ? point : least,
  );
}

function between([u0, v0]: SheetPoint, [u1, v1]: SheetPoint, share: number): SheetPoint {
  return [u0 + share * (u1 - u0), v0 + share * (v1 - v0)];
}
