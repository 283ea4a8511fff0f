import { BALL_RADIUS } from "./drawingFrame.ts";
import { pathOf } from "./pathOf.ts";
import type { SheetPoint, WheelDrawing } from "./wheelDrawing.ts";

export type KnuckleLinesProps = {
  drawing: WheelDrawing;
  /** mm to a pixel. */
  perPx: number;
};

/** mm that the steering axis is drawn past its ball joints, and the pin past the hub face. */
const PAST = 60;

/** The steering axis with its ball joints, the pin, and the hub face. */
export function KnuckleLines({ drawing, perPx }: KnuckleLinesProps) {
  const { upperBallJoint, lowerBallJoint, pinStart, hubFace, hubFaceLine } = drawing;
  return (
    <g className="wheel-knuckle">
      <path
        className="wheel-axis"
        d={pathOf([beyond(lowerBallJoint, upperBallJoint), beyond(upperBallJoint, lowerBallJoint)], false)}
      />
      <path className="wheel-axis" d={pathOf([pinStart, beyond(pinStart, hubFace)], false)} />
      <path className="wheel-pin" d={pathOf([pinStart, hubFace], false)} />
      <path className="wheel-hub-face" d={pathOf(hubFaceLine, false)} />
      {[lowerBallJoint, upperBallJoint].map(([u, v], i) => (
        <circle key={i === 0 ? "lower" : "upper"} cx={u} cy={v} r={Math.max(BALL_RADIUS, 4 * perPx)} />
      ))}
    </g>
  );
}

/** A little past `to`, seen from `from`. */
function beyond(from: SheetPoint, to: SheetPoint): SheetPoint {
  const [du, dv] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(du, dv);
  if (!(size > 0)) return to;
  return [to[0] + (du / size) * PAST, to[1] + (dv / size) * PAST];
}
