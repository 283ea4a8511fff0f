import { nearerBefore } from "../../studies/map/beforeLock.ts";
import type { Model } from "../../studies/model/model.ts";
import type { GapEntry } from "../../studies/reports/gapsAt.ts";
import type { FloorPose } from "../../studies/stances/floorPose.ts";
import { nearerBeforeSentence } from "../../studies/wording/beforeLockWords.ts";
import { clearanceTold } from "../../studies/wording/floorWords.ts";
import { gapWord } from "../../studies/wording/gapTexts.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { poseSentence } from "../../studies/wording/poseSentence.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { ApartPose, SidePose, SolvedPose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { degreesCell, gapCell, lengthCell, pointCell, textTable } from "./textTable.ts";

/** Points of a side, in the order a person looks for them. */
const POINTS = [
  ["Wheel center", "wheelCenter"],
  ["Hub face", "hubFace"],
  ["Upper ball joint", "upperBallJoint"],
  ["Lower ball joint", "lowerBallJoint"],
  ["Tie rod, outer end", "tieRodOuter"],
  ["Tie rod, inner end", "tieRodInner"],
  ["Contact patch", "contactPatch"],
] as const;

const ANGLES = [
  ["Camber", "camber"],
  ["Steer angle, + = left", "steerAngle"],
  ["Toe, + = in", "toe"],
  ["Caster", "caster"],
  ["Kingpin inclination", "kingpinInclination"],
] as const;

const LENGTHS = [
  ["Scrub radius", "scrubRadius"],
  ["Mechanical trail", "mechanicalTrail"],
  ["Tie rod length", "tieRodLength"],
] as const;

/**
 * One pose as a person reads it: the sentence first, then alignment and points of both sides, then the gaps.
 * @param floor the floor under it, where it was asked for
 */
export function poseTable(
  pose: SolvedPose | ApartPose,
  gaps: readonly GapEntry[],
  model: Model,
  floor: FloorPose | null = null,
): string {
  const format = formatOf(model.setup);
  const blocks = [
    `${poseSentence(gaps, pose, model, format)}\n${beforeLock(pose, model)}${outsideTravel(pose, model)}`,
    sidesTable(pose, model),
    gapsTable(gaps, model),
    floor === null ? "" : floorPoseTable(floor, format),
  ];
  return blocks.filter((block) => block !== "").join("\n");
}

/** At a full lock: that it comes nearer on the way there, where it does. */
function beforeLock(pose: SolvedPose | ApartPose, model: Model): string {
  if (!("travel" in pose) || Math.abs(pose.steer) !== 1) return "";
  const nearer = nearerBefore(model, pose.travel, pose.steer > 0 ? 1 : -1);
  const told = nearer && nearerBeforeSentence(nearer, pose.travel, model, formatOf(model.setup));
  return told ? `${told}\n` : "";
}

function outsideTravel(pose: SolvedPose | ApartPose, model: Model): string {
  const { droop, bump } = model.setup.travel;
  const travels = "travel" in pose ? [pose.travel] : [pose.travels.left, pose.travels.right];
  const isOutside = travels.some((travel) => travel < droop || travel > bump);
  return isOutside ? "This height is outside the setup's own travel.\n" : "";
}

function sidesTable({ left, right }: Pick<SolvedPose, "left" | "right">, model: Model): string {
  const { units } = model.setup;
  const format = formatOf(model.setup);
  const row = (name: string, cell: (side: SidePose) => string) => [name, cell(left), cell(right)];
  const rows = [
    ...ANGLES.map(([name, key]) => row(`${name} (deg)`, (side) => degreesCell(side[key]))),
    ...LENGTHS.map(([name, key]) => row(`${name} (${units})`, (side) => lengthCell(side[key], format))),
    ...POINTS.map(([name, key]) => row(`${name} X, Y, Z (${units})`, (side) => pointCell(side[key], format))),
  ];
  const columns = [
    { header: "", align: "left" },
    { header: "Left", align: "right" },
    { header: "Right", align: "right" },
  ] as const;
  return textTable(columns, rows);
}

function gapsTable(gaps: readonly GapEntry[], model: Model): string {
  if (gaps.length === 0) return "";
  const { units, allowance } = model.setup;
  const format = formatOf(model.setup);
  const columns = [
    { header: "Part", align: "left" },
    { header: "Side", align: "left" },
    { header: "Verdict", align: "left" },
    { header: `Gap (${units})`, align: "right" },
    { header: `Point X, Y, Z (${units})`, align: "right" },
  ] as const;
  const rows = gaps.map(({ part, side, gap, point }) => [
    part,
    side,
    gapWord(gap, allowance),
    gapCell(gap, format),
    pointCell(point, format),
  ]);
  return textTable(columns, rows);
}

/** The floor under one pose: how both wheels stand on it, then what is how far above it. */
function floorPoseTable(floor: FloorPose, format: LengthFormat): string {
  const { roll, pitch, track, clearances, lip, frame, rollCenter } = floor;
  const { units } = format;
  const length = (mm: number) => lengthCell(mm, format);
  const height = (mm: number) => length(clearanceTold(mm, format));
  const row = (name: string, cell: (side: Side) => string) => [name, cell("left"), cell("right")];
  const names = [...new Set(clearances.map(({ name }) => name))];
  const clearanceOf = (name: string, side: Side) => {
    const found = clearances.find((one) => one.name === name && one.side === side);
    return found ? height(found.clearance) : "-";
  };
  const rows = [
    row("Camber to the floor (deg)", (side) => degreesCell(floor[side].camber)),
    row(`Contact patch X, Y, Z (${units})`, (side) => pointCell(floor[side].contactPatch, format)),
    ...(lip ? [row(`Floor to lip (${units})`, (side) => height(lip[side]))] : []),
    ...(frame ? [row(`Floor to frame (${units})`, (side) => height(frame[side]))] : []),
    ...names.map((name) => row(`Floor to ${name} (${units})`, (side) => clearanceOf(name, side))),
  ];
  const columns = [
    { header: "On the floor", align: "left" },
    { header: "Left", align: "right" },
    { header: "Right", align: "right" },
  ] as const;
  const center = rollCenter === null ? "" : `, roll center ${length(rollCenter.height)} ${units} high`;
  const whole = `Body roll ${degreesCell(roll)}°, + = left side up; pitch ${degreesCell(pitch)}°, + = nose down; track ${length(track)} ${units}${center}.`;
  return `${whole}\n${textTable(columns, rows)}`;
}
