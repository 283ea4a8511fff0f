import type { RollCenter, WheelTravels } from "../../suspension/rollCenter.ts";
import { floorAt } from "../floor/floorAt.ts";
import { wheelTravelsInRoll } from "../floor/wheelTravelsInRoll.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { evenly } from "../numeric/evenly.ts";

/** The body rolled over the floor at a height, steering straight ahead. Vehicle axes, mm, radians. */
export interface RollRow {
  /** + = left side up. */
  readonly roll: number;
  /** One wheel goes into bump by what the other goes into droop. */
  readonly travels: WheelTravels;
  /** null = the force lines do not cross. `y` is off the truck's own center plane, which rolls with the body. */
  readonly rollCenter: RollCenter | null;
}

/** rad. Body roll each way that is looked at where the setup gives none: a hard corner (common practice, no source). */
export const USUAL_ROLL = 4 * (Math.PI / 180);

/** mm. A wheel this near an end of travel is at it. */
const AT_END = 1e-6;

/** Microseconds, about, of one row. */
const ROW_WORK = 400;

/**
 * Where the roll center goes as the body rolls at a height (mm of travel): from right side up to left side up, evenly in
 * what the wheels travel, as far as the setup asks (`roll.most`, else `USUAL_ROLL`) and both wheels keep their travel.
 * Springs, and where they let the body settle, are not asked. Empty where a wheel is out of reach, or at an end of travel.
 */
export function rollCurve(
  model: Model,
  travel: number,
  rows: number,
  budget: Budget | null = null,
): RollRow[] {
  const most = model.setup.roll?.most ?? USUAL_ROLL;
  const [low, high] = [halfFor(model, travel, -most), halfFor(model, travel, most)];
  if (low === null || high === null || high - low < AT_END) return [];
  const found: RollRow[] = [];
  for (const half of evenly(low, high, rows)) {
    if (budget?.isSpent(ROW_WORK)) break;
    const travels = { left: travel - half, right: travel + half };
    const floor = floorAt(model, travels, 0);
    if (floor !== null) found.push({ roll: floor.roll, travels, rollCenter: floor.rollCenter });
  }
  return found;
}

/** Half of what the wheels are apart at a roll, + = the right one in bump; as far as they go. null = out of reach as it stands */
function halfFor(model: Model, travel: number, roll: number): number | null {
  const { droop, bump } = model.setup.travel;
  const found = wheelTravelsInRoll(model, travel, roll);
  const travels = found.ok ? found.travels : (found.most?.travels ?? null);
  if (travels === null) return null;
  const room = Math.max(0, Math.min(bump - travel, travel - droop));
  return Math.min(room, Math.max(-room, 0.5 * (travels.right - travels.left)));
}
