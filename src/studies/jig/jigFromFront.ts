import { arrowLine, type Place, type SketchShape, words } from "../../geometry/sketch.ts";
import type { JigSheet } from "./jigSheet.ts";
import { endOn, heightDimension, type JigSketchWords, outLine, placedIn, VIEW } from "./jigView.ts";

/** The jig seen from the front: the ball joint line upright, the pin, both straightedges end on and the tape between. */
export function jigFromFront(sheet: JigSheet, hand: 1 | -1, say: JigSketchWords): readonly SketchShape[] {
  const { knuckle, pinEnd, jointHeight, clampAt, faceAt } = sheet;
  const { span, pinHeight, pinAngle, hubFace } = knuckle;
  const [sin, cos] = [Math.sin(pinAngle), Math.cos(pinAngle)];
  const faceHalf = 0.26 * span;
  const floor = Math.min(0, -jointHeight);
  const ends = hubFace + pinEnd;
  const extents = {
    inboard: 0,
    outboard: ends * cos,
    low: Math.min(floor, pinHeight - ends * sin - faceHalf),
    high: Math.max(span, pinHeight),
  };
  const at = placedIn(extents, { inboard: 190, outboard: 104, top: 40, bottom: 40 }, hand);
  const along = (s: number, up = 0): Place => at(s * cos + up * sin, pinHeight - s * sin + up * cos);
  const [inboard, outboard] = hand === 1 ? (["end", "start"] as const) : (["start", "end"] as const);
  const datum = at(0, floor);
  const face = along(hubFace);
  const [lower, upper, pin] = [at(0, 0), at(0, span), at(0, pinHeight)];
  const tip = along(ends);
  const spanX = lower[0] - hand * 96;
  const pinX = lower[0] - hand * 26;
  const tooHigh = 0.22 * span;
  const faceX = tip[0] + hand * 22;
  return [
    {
      kind: "line",
      look: "datum",
      points: [
        [lower[0], at(0, extents.low)[1] + 8],
        [upper[0], upper[1] - 14],
      ],
    },
    {
      kind: "line",
      look: "datum",
      points: [
        [spanX - hand * 8, datum[1]],
        [faceX + hand * 8, datum[1]],
      ],
    },
    words(say.datum, [hand === 1 ? 8 : VIEW.width - 8, VIEW.height - 10], hand === 1 ? "start" : "end"),
    { kind: "ring", look: "part", at: lower, radius: 8 },
    { kind: "ring", look: "part", at: upper, radius: 8 },
    { kind: "line", look: "part", points: [pin, tip] },
    { kind: "line", look: "part", points: [along(hubFace, -faceHalf), along(hubFace, faceHalf)] },
    endOn(pin),
    endOn(face),
    ...arrowLine("tape", along(3, 0.08 * span), along(hubFace - 2, 0.08 * span)),
    words(say.length(hubFace), lifted(along(hubFace / 2, 0.08 * span)), "middle", true),
    // Clamped too high it reads more: square to the face from a higher place of the ball joint line.
    { kind: "line", look: "off", points: [along(-tooHigh * (sin / cos), tooHigh), along(hubFace, tooHigh)] },
    words(say.offHeight, [VIEW.width / 2, 14], "middle"),
    outLine([VIEW.width / 2, 19], along((hubFace - tooHigh * (sin / cos)) / 2, tooHigh)),
    ...angleAt(along(hubFace, faceHalf), hand, pinAngle, say),
    outLine(upper, [spanX - hand * 5, upper[1]]),
    outLine(lower, [spanX - hand * 5, lower[1]]),
    ...heightDimension(spanX, lower[1], upper[1], say.length(span), inboard),
    outLine(pin, [pinX - hand * 5, pin[1]]),
    ...heightDimension(pinX, datum[1], pin[1], say.length(clampAt), inboard),
    outLine(face, [faceX + hand * 5, face[1]]),
    ...heightDimension(faceX, datum[1], face[1], say.length(faceAt), outboard),
    words(say.straightedge, [pin[0] - hand * 10, pin[1] - 12], inboard),
  ];
}

/** A place for words just over another. */
function lifted([x, y]: Place): Place {
  return [x, y - 7];
}

/** The upright at the top of the face and the angle that the face leans from it. */
function angleAt([x, y]: Place, hand: 1 | -1, pinAngle: number, say: JigSketchWords): readonly SketchShape[] {
  return [
    {
      kind: "line",
      look: "datum",
      points: [
        [x, y],
        [x, y - 40],
      ],
    },
    {
      kind: "line",
      look: "thin",
      points: [
        [x, y],
        [x + hand * 40 * Math.sin(pinAngle), y - 40 * Math.cos(pinAngle)],
      ],
    },
    words(say.angle(pinAngle), [x + hand * 12, y - 28], hand === 1 ? "start" : "end", true),
    words(say.angleFinder, [x + hand * 12, y - 14], hand === 1 ? "start" : "end"),
  ];
}
