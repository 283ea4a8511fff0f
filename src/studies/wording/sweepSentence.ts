import { solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import type { Sweep, SweepRow } from "../reports/sweep.ts";
import { amountWords, formatOf } from "./lengths.ts";
import { limitThing } from "./limitSentences.ts";
import { nearestSurface, partWords } from "./nearestSurface.ts";
import { heightWords, inputWords } from "./poseWords.ts";

/** The closest a part comes in the rows of a sweep, and what passes a limit or cannot be reached; says that rows are not every pose. */
export function sweepSentence(sweep: Sweep, model: Model): string {
  const rows = [...sweep.byTravel, ...sweep.bySteer];
  return [closest(rows, model), passing(rows), unreached(rows)]
    .filter((sentence) => sentence !== "")
    .join("\n");
}

/** Stands before the travel or steer of a row that passes a limit. */
export const PAST_MARK = "!";

/** Rows at poses that the truck cannot take, by which limits; "" where every limit is kept. */
function passing(rows: readonly SweepRow[]): string {
  const past = rows.filter((row) => row.ok && row.past.length > 0);
  if (past.length === 0) return "";
  const names = past.flatMap((row) => (row.ok ? row.past.map(({ name }) => limitThing(name)) : []));
  const told = [...new Set(names)].map((name) => `the ${name}`).join(" or ");
  return `${past.length} of ${rows.length} rows, marked ${PAST_MARK}, ${past.length === 1 ? "is" : "are"} past ${told}: the truck cannot come there.`;
}

function closest(rows: readonly SweepRow[], model: Model): string {
  const format = formatOf(model.setup);
  const reached = rows.flatMap((row) => (row.ok ? [row] : []));
  const gaps = reached.flatMap((row) => row.gaps.map((entry) => ({ row, entry })));
  const [first, ...rest] = gaps;
  if (!first) return "No gaps: no row has a body part.";
  const { row, entry } = rest.reduce((best, next) => (next.entry.gap < best.entry.gap ? next : best), first);
  const pose = solvePose(model.frontEnd, row.travel, row.steer);
  const what = `the ${entry.side} ${pose.ok ? nearestSurface(model, pose, entry.side, entry.part) : "tire"}`;
  const part = `the ${partWords(model, entry.side, entry.part)}`;
  const amount = amountWords(entry.gap, format);
  const how = entry.gap < 0 ? `rubs ${part} by ${amount}` : `is ${amount} from ${part}`;
  const when = entry.together
    ? "at every pose"
    : `${heightWords(row.travel, model, format)}, ${inputWords(row.steer)}`;
  return `Closest in these rows: ${what} ${how} ${when}. Between rows it may be closer: check looks at every pose.`;
}

function unreached(rows: readonly SweepRow[]): string {
  const out = rows.flatMap((row) => (row.ok ? [] : [row]));
  const joints = [...new Set(out.map((row) => `${row.side} ${row.joint}`))];
  if (joints.length === 0) return "";
  return `${out.length} of ${rows.length} rows cannot be reached (${joints.join(", ")}); they show dashes.`;
}
