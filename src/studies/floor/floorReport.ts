import type { RollSetup } from "../../setup/types/floorTypes.ts";
import { type HeightStop, heightStop } from "../limits/heightWay.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import type { FloorPose } from "../stances/floorPose.ts";
import { type StanceMeasures, stanceMeasures } from "../stances/stanceMeasures.ts";
import { floorAt, type ScrubLine, scrubLine } from "./floorAt.ts";
import { type RollCoverage, rollCoverage } from "./rollCoverage.ts";

/** A stance on the floor, straight ahead; null = a wheel is out of reach there. */
export interface FloorStance {
  readonly name: string;
  readonly travel: number;
  /** What keeps the truck from standing there; null = it stands. */
  readonly stop: HeightStop | null;
  readonly measures: StanceMeasures | null;
  readonly floor: FloorPose | null;
  /** With the left, then the right tire flat; empty when the setup names no points that may drag, or out of reach. */
  readonly scrub: readonly ScrubLine[];
}

/** A truck's stances on the floor. */
export interface FloorReport {
  readonly stances: readonly FloorStance[];
  /** null when no roll is asked for. */
  readonly roll: RollCoverage | null;
  /** A named point, or the frame where it is measured, is below the floor at a stance. */
  readonly below: boolean;
}

/**
 * Every stance (the measured height when the setup names none) in all measures and on the floor, with what hangs below
 * the scrub line, and its poses of roll and curb. @param roll what to ask instead of the setup's `roll` block
 * @param budget once it is spent, where a stance is stopped is not told
 */
export function floorReport(
  model: Model,
  roll: RollSetup | null = model.setup.roll,
  budget: Budget = Budget.endless(),
): FloorReport {
  const { setup } = model;
  const named = setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }];
  const hasPoints = (setup.floor?.points ?? []).length > 0;
  const stances = named.map(({ name, travel }) => ({
    name,
    travel,
    stop: heightStop(model, travel, budget),
    measures: stanceMeasures(model, travel),
    floor: floorAt(model, { left: travel, right: travel }, 0),
    scrub: hasPoints
      ? (["left", "right"] as const).flatMap((flat) => scrubLine(model, travel, flat) ?? [])
      : [],
  }));
  const below = stances.some(({ floor }) => floor !== null && hangsBelow(floor));
  return { stances, roll: rollCoverage(model, roll), below };
}

function hangsBelow({ clearances, frame }: FloorPose): boolean {
  return (
    clearances.some(({ clearance }) => clearance < 0) ||
    (frame !== null && (frame.left < 0 || frame.right < 0))
  );
}
