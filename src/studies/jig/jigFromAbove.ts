import { arrowLine, type Place, type SketchShape, words } from "../../geometry/sketch.ts";
import { turned } from "./jigReadings.ts";
import type { JigSheet } from "./jigSheet.ts";
import { type JigSketchWords, outLine, placedIn, VIEW } from "./jigView.ts";

/**
 * The jig seen along the ball joint line from above, front of the truck at the foot, so that outboard is on the same side
 * as from the front: both straightedges from mark to mark, the tapes in front and behind, the outer tie rod end.
 */
export function jigFromAbove(sheet: JigSheet, hand: 1 | -1, say: JigSketchWords): readonly SketchShape[] {
  const { knuckle, halfLength, pinEnd, rows } = sheet;
  const { toe, pinAngle, hubFace, pinLead, steeringArm } = knuckle;
  const cos = Math.cos(pinAngle);
  const [ahead, out] = turned(steeringArm, toe);
  const reach = hubFace * cos;
  const extents = {
    inboard: Math.min(0, out) - 0.05 * halfLength,
    outboard: (hubFace + pinEnd) * cos,
    low: -Math.max(halfLength, ahead) * 1.04,
    high: Math.max(halfLength, -ahead) * 1.04,
  };
  // Up on the page is behind.
  const page = placedIn(extents, { inboard: 120, outboard: 40, top: 34, bottom: 44 }, hand);
  const at = (forward: number, outboard: number): Place => page(outboard, -forward);
  /** A place on the face's straightedge, so far ahead along it. */
  const onFace = (s: number): Place => {
    const [x, y] = turned([pinLead + s, reach, 0], toe);
    return at(x, y);
  };
  const reading = (key: string) => rows.find((row) => row.key === key)!.mustRead;
  /** The tape from a mark meets the face square to it. */
  const tape = (mark: number, key: "front" | "behind"): readonly SketchShape[] => {
    const length = reading(key) * cos;
    const from = at(mark, 0);
    const to = at(mark + length * Math.sin(toe), length * Math.cos(toe));
    const word: Place = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2 - 6];
    return [
      ...arrowLine("tape", from, to),
      words(say.length(reading(key)), word, "middle", true),
      words(say.tape[key], [word[0], word[1] + 19], "middle"),
    ];
  };
  const [inboard, outboard] = hand === 1 ? (["end", "start"] as const) : (["start", "end"] as const);
  // Words at the tie rod end stand away from the joint; two lines need more room above than below.
  const away = ahead > 0 ? 1 : -2;
  const joint = at(0, 0);
  const arm = at(ahead, out);
  const [pinFrom, pinTo] = [
    turned([pinLead, 0, 0], toe),
    turned([pinLead, (hubFace + pinEnd) * cos, 0], toe),
  ];
  const [front, behind] = [at(halfLength, 0), at(-halfLength, 0)];
  const armX = Math.min(arm[0] * hand, joint[0] * hand) * hand - hand * 22;
  return [
    { kind: "line", look: "datum", points: [at(extents.low * -1, 0), at(extents.high * -1, 0)] },
    { kind: "line", look: "edge", points: [at(halfLength * 1.03, 0), at(-halfLength * 1.03, 0)] },
    { kind: "line", look: "edge", points: [onFace(halfLength * 1.03), onFace(-halfLength * 1.03)] },
    { kind: "line", look: "part", points: [at(pinFrom[0], pinFrom[1]), at(pinTo[0], pinTo[1])] },
    { kind: "ring", look: "part", at: joint, radius: 8 },
    ...tape(halfLength, "front"),
    ...tape(-halfLength, "behind"),
    { kind: "line", look: "part", points: [joint, arm] },
    { kind: "ring", look: "part", at: arm, radius: 5 },
    outLine(arm, [armX - hand * 4, arm[1]]),
    outLine(joint, [armX - hand * 4, joint[1]]),
    ...arrowLine("thin", [armX, joint[1]], [armX, arm[1]]),
    words(say.length(Math.abs(ahead)), [armX - hand * 5, (joint[1] + arm[1]) / 2 + 4], inboard, true),
    words(say.tieRodEnd, [armX, arm[1] + away * 18], inboard),
    words(say.armOut(out), [armX, arm[1] + away * 18 + 14], inboard, true),
    words(say.mark, [front[0] - hand * 8, front[1] + 4], inboard),
    words(say.mark, [behind[0] - hand * 8, behind[1] + 4], inboard),
    words(say.onFace, [onFace(-halfLength)[0] + hand * 8, onFace(-halfLength / 2)[1]], outboard),
    words(
      say.straightedge,
      [joint[0] - hand * 8, at(ahead > 0 ? -halfLength / 2 : halfLength / 2, 0)[1]],
      inboard,
    ),
    words(say.forward, [VIEW.width / 2, VIEW.height - 8], "middle"),
  ];
}
