import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { FloorReport, FloorStance } from "../floor/floorReport.ts";
import type { RollCase } from "../floor/rollCase.ts";
import type { RollCoverage } from "../floor/rollCoverage.ts";
import type { FloorClearance, FloorPose, FloorWheel } from "../stances/floorPose.ts";
import { pointFromMm } from "./documentText.ts";

/** The stances on the floor as `floor --json` prints them: the file's units, degrees. `roll` null = none asked for. */
export function floorJson({ stances, roll, below }: FloorReport, { units, floor }: Setup) {
  return {
    units,
    rear: floor?.rear ?? "follows",
    below,
    stances: stances.map((stance) => stanceJson(stance, units)),
    roll: roll && rollJson(roll, units),
  };
}

function stanceJson({ name, travel, measures, floor, scrub }: FloorStance, units: LengthUnit) {
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  return {
    name,
    travel: length(travel),
    measures: measures && {
      travel: length(measures.travel),
      lowerArmAngle: degFromRad(measures.lowerArmAngle),
      airSpringHeight: length(measures.airSpringHeight),
      lipHeight: length(measures.lipHeight),
      frameHeight: length(measures.frameHeight),
    },
    floor: floor && floorPoseJson(floor, units),
    scrub: scrub.map(({ flat, floor: onRim, dragging }) => ({
      flat,
      floor: floorPoseJson(onRim, units),
      dragging: dragging.map((one) => clearanceJson(one, units)),
    })),
  };
}

/** What roll and curb ask for at each stance, and whether a check has it. */
export function rollJson({ roll, stances, covered }: RollCoverage, units: LengthUnit) {
  return {
    most: degFromRad(roll.most),
    curb: roll.curb === null ? null : unitsFromMm(roll.curb, units),
    covered,
    stances: stances.map(({ name, travel, cases }) => ({
      name,
      travel: unitsFromMm(travel, units),
      cases: cases.map((one) => caseJson(one, units)),
    })),
  };
}

function caseJson({ asked, state, travels, floor, stops, uncovered, until }: RollCase, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const isRoll = asked.kind === "roll";
  return {
    asked: isRoll
      ? { kind: asked.kind, roll: degFromRad(asked.roll) }
      : { kind: asked.kind, side: asked.side, lift: length(asked.lift) },
    state,
    travels: travels && { left: length(travels.left), right: length(travels.right) },
    floor: floor && floorPoseJson(floor, units),
    stops: stops.map(({ side, name, travel }) => ({ side, name, travel: length(travel) })),
    uncovered: uncovered.map(({ side, from, to }) => ({ side, from: length(from), to: length(to) })),
    until: until === null ? null : isRoll ? degFromRad(until) : length(until),
  };
}

/** A truck on its floor: vehicle axes, the file's units, degrees; `normal` is a unit vector, normal · p = `offset`. */
export function floorPoseJson(floor: FloorPose, units: LengthUnit) {
  const { plane, roll, pitch, track, clearances, lip, frame, rollCenter } = floor;
  const length = (mm: number) => unitsFromMm(mm, units);
  const sides = (both: FloorPose["lip"]) => both && { left: length(both.left), right: length(both.right) };
  return {
    normal: plane.normal,
    offset: length(plane.offset),
    roll: degFromRad(roll),
    pitch: degFromRad(pitch),
    track: length(track),
    left: wheelJson(floor.left, units),
    right: wheelJson(floor.right, units),
    lip: sides(lip),
    frame: sides(frame),
    rollCenter: rollCenter && {
      height: length(rollCenter.height),
      y: length(rollCenter.y),
      z: length(rollCenter.z),
    },
    clearances: clearances.map((one) => clearanceJson(one, units)),
  };
}

/** A point and its height over the floor. */
function clearanceJson({ name, side, at, clearance }: FloorClearance, units: LengthUnit) {
  return { name, side, at: pointFromMm(at, units), clearance: unitsFromMm(clearance, units) };
}

function wheelJson({ travel, contactPatch, camber }: FloorWheel, units: LengthUnit) {
  return {
    travel: unitsFromMm(travel, units),
    contactPatch: pointFromMm(contactPatch, units),
    camber: degFromRad(camber),
  };
}
