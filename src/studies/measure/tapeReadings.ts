import type { PointName, ReadingSize } from "../../setup/types/readingTypes.ts";
import type { Ask } from "./ask.ts";
import { ASSUMED_LIP_POINTS } from "./assumedTruck.ts";

const height = (point: PointName): Ask => ({ kind: "height", point, from: "centerline", side: "left" });
const offset = (point: PointName): Ask => ({ kind: "offset", point, from: "centerline", side: "left" });
const offFrame = (point: PointName): Ask => ({ kind: "offset", point, from: "frame", side: "left" });
const ahead = (point: PointName): Ask => ({ kind: "ahead", point, from: "centerline", side: "left" });
const tape = (a: PointName, b: PointName): Ask => ({ kind: "between", points: [a, b], side: "left" });
const across = (point: PointName): Ask => ({ kind: "between", points: [point, point], side: "across" });
const size = (of: ReadingSize): Ask => ({ kind: "size", of, side: "left" });

const LIP = [...ASSUMED_LIP_POINTS.keys()];
const LIP_TOP = LIP[(LIP.length - 1) / 2]!;

/**
 * Everything that can be reached with a tape, in the order a person would crawl: around the wheel, the lip, then under the
 * truck from the ball joints inward.
 */
export const TAPE_READINGS: readonly Ask[] = [
  size("wheelbase"),
  size("track"),
  size("tire.diameter"),
  size("tire.sectionWidth"),
  size("tire.treadWidth"),
  size("tire.shoulderDrop"),
  size("wheel.backspacing"),
  size("wheel.lipToLip"),
  height("wheelCenter"),
  tape("rimTop", LIP_TOP),
  ...LIP.flatMap((point) => [height(point), offset(point), ahead(point)]),
  height("lowerArm.ballJoint"),
  across("lowerArm.ballJoint"),
  ahead("lowerArm.ballJoint"),
  tape("lowerArm.ballJoint", "upperArm.ballJoint"),
  height("upperArm.ballJoint"),
  across("upperArm.ballJoint"),
  ahead("upperArm.ballJoint"),
  tape("lowerArm.ballJoint", "tieRodOuter"),
  tape("upperArm.ballJoint", "tieRodOuter"),
  height("tieRodOuter"),
  size("frameWidth"),
  height("lowerArm.frontPivot"),
  offset("lowerArm.frontPivot"),
  offFrame("lowerArm.frontPivot"),
  ahead("lowerArm.frontPivot"),
  height("lowerArm.rearPivot"),
  offset("lowerArm.rearPivot"),
  offFrame("lowerArm.rearPivot"),
  ahead("lowerArm.rearPivot"),
  tape("lowerArm.frontPivot", "lowerArm.rearPivot"),
  tape("lowerArm.frontPivot", "lowerArm.ballJoint"),
  tape("lowerArm.rearPivot", "lowerArm.ballJoint"),
  { kind: "angle", arm: "lowerArm", side: "left" },
  height("upperArm.frontPivot"),
  offset("upperArm.frontPivot"),
  offFrame("upperArm.frontPivot"),
  ahead("upperArm.frontPivot"),
  height("upperArm.rearPivot"),
  offset("upperArm.rearPivot"),
  offFrame("upperArm.rearPivot"),
  ahead("upperArm.rearPivot"),
  tape("upperArm.frontPivot", "upperArm.rearPivot"),
  tape("upperArm.frontPivot", "upperArm.ballJoint"),
  tape("upperArm.rearPivot", "upperArm.ballJoint"),
  { kind: "angle", arm: "upperArm", side: "left" },
  height("steering.innerEnd"),
  across("steering.innerEnd"),
  ahead("steering.innerEnd"),
  tape("steering.innerEnd", "tieRodOuter"),
  ...(
    ["steering.pitman.pivot", "steering.pitman.end", "steering.idler.pivot", "steering.idler.end"] as const
  ).flatMap((point) => [height(point), offset(point), ahead(point)]),
];
