import { POSE } from "../../suspension/poseRow.ts";
import { WHEEL_ROW, type WheelTable } from "../envelope/wheelTable.ts";
import type { SideRange } from "../search/sideRange.ts";
import { TriedPose } from "../search/triedPose.ts";

/** Heights and steers looked at for where poses are kept, and halvings to a border between. */
const ARMS = 25;
const STEERS = 49;
const HALVINGS = 20;

/** No more poses along a row or a column. */
const MOST = 240;

/** Steers of one height between which poses are kept. */
interface Row {
  readonly arm: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The poses that a check counts of one side, as a table: at each height the steers from the first that is kept to the last; what
 * a limit leaves out between counts with them. Null where no pose is kept.
 * @param ballRadius no point of the ring is farther from the wheel's center, mm. @param spacing of the ring from a pose to the next
 */
export function poseTable(range: SideRange, ballRadius: number, spacing: number): WheelTable | null {
  const tried = new TriedPose(range.wheel, range);
  const keeps = (arm: number, steer: number) => tried.stands(arm, steer) && tried.keeps(arm, steer);
  const { armLow, armHigh, steerLow, steerHigh } = range;
  const rowAt = (arm: number): Row | null => {
    const steers = Array.from(
      { length: STEERS },
      (_, j) => steerLow + ((steerHigh - steerLow) * j) / (STEERS - 1),
    );
    const first = steers.findIndex((steer) => keeps(arm, steer));
    if (first < 0) return null;
    const last = steers.findLastIndex((steer) => keeps(arm, steer));
    const edge = (good: number, bad: number | undefined) =>
      bad === undefined ? good : borderOf((steer) => keeps(arm, steer), good, bad);
    return { arm, low: edge(steers[first]!, steers[first - 1]), high: edge(steers[last]!, steers[last + 1]) };
  };
  const arms = Array.from({ length: ARMS }, (_, i) => armLow + ((armHigh - armLow) * i) / (ARMS - 1));
  const first = arms.findIndex((arm) => rowAt(arm) !== null);
  if (first < 0) return null;
  const last = arms.findLastIndex((arm) => rowAt(arm) !== null);
  const edge = (good: number, bad: number | undefined) =>
    bad === undefined ? good : borderOf((arm) => rowAt(arm) !== null, good, bad);
  const [low, high] = [edge(arms[first]!, arms[first - 1]), edge(arms[last]!, arms[last + 1])];
  const tableOf = (rows: number, columns: number) =>
    tabled(
      Array.from({ length: rows }, (_, i) =>
        rows === 1 ? low : low + ((high - low) * i) / (rows - 1),
      ).flatMap((arm) => rowAt(arm) ?? []),
      columns,
      range,
      tried,
    );
  const isOneHeight = !(high > low);
  const coarse = tableOf(isOneHeight ? 1 : ARMS, STEERS);
  const count = (step: number, steps: number) =>
    Math.min(MOST, Math.max(2, 1 + Math.ceil((step * (steps - 1)) / spacing)));
  const rows = isOneHeight ? 1 : count(largestStep(coarse, ballRadius, coarse.columns), coarse.rows);
  return { ...tableOf(rows, count(largestStep(coarse, ballRadius, 1), coarse.columns)), spacing };
}

function borderOf(keeps: (value: number) => boolean, good: number, bad: number): number {
  let [inside, outside] = [good, bad];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (inside + outside);
    if (keeps(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

function tabled(rows: readonly Row[], columns: number, range: SideRange, tried: TriedPose): WheelTable {
  const wheels = new Float64Array(rows.length * columns * WHEEL_ROW);
  const steers = new Float64Array(rows.length * columns);
  for (const [i, { arm, low, high }] of rows.entries()) {
    // Where the border of reach ends a row the knuckle turns like a square root there: cosine steps.
    const isCut = low > range.steerLow || high < range.steerHigh;
    for (let j = 0; j < columns; j++) {
      const share = j / (columns - 1);
      const steer = low + (high - low) * (isCut ? 0.5 - 0.5 * Math.cos(Math.PI * share) : share);
      // Where no wheel can stand between, the pose before stands in.
      tried.stands(arm, steer);
      const at = i * columns + j;
      steers[at] = steer;
      for (let k = 0; k < WHEEL_ROW; k++) wheels[at * WHEEL_ROW + k] = tried.row[POSE.wheelCenter + k]!;
    }
  }
  const arms = Float64Array.from(rows, ({ arm }) => arm);
  return { rows: rows.length, columns, wheels, arms, steers, spacing: 0 };
}

/** How far a point of the ring moves at most from a pose to the one so many places on; mm. */
function largestStep({ rows, columns, wheels }: WheelTable, ballRadius: number, apart: number): number {
  let most = 0;
  for (let at = 0; at + apart < rows * columns; at++) {
    if (apart === 1 && (at + 1) % columns === 0) continue;
    const [a, b] = [at * WHEEL_ROW, (at + apart) * WHEEL_ROW];
    let slide = 0;
    let turn = 0;
    for (let k = 0; k < 3; k++) {
      slide += (wheels[b + k]! - wheels[a + k]!) ** 2;
      turn += (wheels[b + 3 + k]! - wheels[a + 3 + k]!) ** 2;
    }
    most = Math.max(most, Math.sqrt(slide) + ballRadius * Math.sqrt(turn));
  }
  return most;
}
