import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL_ROW } from "../../gaps/cells/cells.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import type { SideModel } from "../../suspension/frontEnd.ts";
import type { BorderCell } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { legCellTo } from "./legCell.ts";
import { boundFan, type FanBound } from "./legFan.ts";

// Leaf scratch.
const pose = new Float64Array(POSE_ROW);
const outer = new Float64Array(3);
const cell = new Float64Array(CELL_ROW);
const found = cellBound();
/** B's motion: one input that may move it by `slideOff` anywhere. */
const motion = new Float64Array(MOTION_ROW);
motion[MOTION.armHalf] = 1;

/**
 * Bounds the gap of a piece of a leg over a cell of poses at the border of reach, from the border's own pose:
 * the ring and the leg's outer end are fixed to each other, and seen from them the inner end B is at most
 * slide + turn × |B − lower ball joint| + (its own way) from where the border's pose has it.
 * Fills `out`, whose `armShare` and `armPath` then are those of all poses of the cell together.
 * @param border filled by `borderCellTo` for the same side and arm angle, `Border.Bounded`.
 * @param inner B at the middle of the cell; @param innerOff how far it can be from there, mm.
 * @returns a lower bound, mm; −Infinity when the upper ball joint has no pose.
 */
export function legAtBorder(
  out: FanBound,
  border: BorderCell,
  side: SideModel,
  ring: RingShape,
  armAngle: number,
  outerAt: number,
  inner: readonly [number, number, number],
  innerOff: number,
  near: number,
  far: number,
  radius: number,
): number {
  const { row, innerAtRest } = side;
  // The ball joints stand where they do at this arm angle, whatever the steering does.
  const status = poseRowTo(pose, 0, row, Math.cos(armAngle), Math.sin(armAngle), ...innerAtRest);
  if (status !== PoseStatus.Ok) return Number.NEGATIVE_INFINITY;
  if (outerAt === POSE.tieRodOuter) tieRodOuterTo(outer, border, row);
  else for (let i = 0; i < 3; i++) outer[i] = pose[outerAt + i]!;
  legCellTo(cell, outer, 0, inner, 0, near, far, radius);
  boundCell(found, ring, border.wheel, 0, cell, 0, null);
  const [lx, ly, lz] = border.lowerBallJoint as unknown as [number, number, number];
  const lever = Math.sqrt((inner[0] - lx) ** 2 + (inner[1] - ly) ** 2 + (inner[2] - lz) ** 2);
  const off = border.slide + border.turn * lever + innerOff;
  motion[MOTION.armSlideOff] = off;
  boundFan(out, ring, border.wheel, 0, outer, 0, inner, 0, near, far, radius, motion);
  return Math.max(out.bound, found.bound - far * off);
}

/** Outer tie rod end of the border's pose, from its wheel axis and the steering axis. */
function tieRodOuterTo(out: Float64Array, border: BorderCell, row: Float64Array): void {
  const k = [pose[POSE.knuckleZ]!, pose[POSE.knuckleZ + 1]!, pose[POSE.knuckleZ + 2]!] as const;
  // Wheel axis = cos·y − sin·k.
  const y = [0, 1, 2].map((i) => (border.wheel[3 + i]! + row[SIDE.pinSin]! * k[i]!) / row[SIDE.pinCos]!);
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const m = (i + 2) % 3;
    const x = y[j]! * k[m]! - y[m]! * k[j]!;
    out[i] =
      border.lowerBallJoint[i]! +
      row[SIDE.steeringArm]! * x +
      row[SIDE.steeringArm + 1]! * y[i]! +
      row[SIDE.steeringArm + 2]! * k[i]!;
  }
}
