import { mapOf } from "../../../../src/studies/map/clearanceMap.ts";
import { contoursOf } from "../../../../src/studies/map/contours.ts";
import type { CheckReport } from "../../../../src/studies/reports/check.ts";
import { gapMarks, partMark, partRows } from "../../../../src/studies/wording/gapRows.ts";
import { poseFacts } from "../../../../src/studies/wording/poseSentence.ts";
import { NEAR, nameOf, type Truth } from "./truth.ts";

/** One pose: its sentence, the marks on the stage and the rows of parts beside it. @param report null = not known yet */
export function judgePose(truth: Truth, travel: number, steer: number, report: CheckReport | null): void {
  const found = truth.at(travel, steer);
  if (found === null) return;
  const { pose, gaps } = found;
  const what = `at ${travel.toFixed(1)} mm, steer ${steer}`;
  const facts = poseFacts(gaps, pose, truth.model);
  const [least] = gaps;
  const { always, model } = truth;
  if (least === undefined) truth.claim(facts.nearest === null, `${what} the pose tells of what is not there`);
  else {
    const { entry, verdict } = facts.nearest!;
    truth.claim(
      always.size > 0 ? always.has(nameOf(entry)) : entry.gap === least.gap,
      `${what} the pose tells of ${entry.part}, the nearest is ${least.part}`,
    );
    truth.claim(verdict === truth.stateOf(entry.gap), `${what} the pose tells ${verdict} of ${entry.gap} mm`);
  }
  const tooNear = gaps.filter(({ gap }) => truth.stateOf(gap) !== "clear");
  truth.claim(
    facts.others === Math.max(0, tooNear.length - 1),
    `${what} the pose counts ${facts.others} more`,
  );
  truth.claim(
    (facts.past.length === 0) === truth.canBe(travel, steer),
    `${what} the pose passes other limits`,
  );

  const worst = report?.worst ?? null;
  const marks = gapMarks(gaps, worst, false, null, model.setup.allowance, truth.format);
  const now = marks.filter(({ kind }) => kind === "now");
  const near = now.filter(({ word }) => word !== "clear");
  truth.claim(
    near.length === tooNear.length && now.every(({ gap, word }) => word === truth.stateOf(gap)),
    `${what} the stage marks ${near.length} of ${tooNear.length} that are too near, or calls one otherwise`,
  );
  // What is far enough is marked where it is the part that is worst somewhere, and nearly too near here.
  const nearly = now.filter(({ word }) => word === "clear");
  truth.claim(
    nearly.every(({ part, gap }) => part === worst?.part && gap < 2 * model.setup.allowance),
    `${what} the stage marks what is far enough`,
  );
  const elsewhere = marks.find(({ kind }) => kind === "elsewhere");
  truth.claim(
    elsewhere === undefined
      ? worst === null
      : elsewhere.word === worst!.verdict && elsewhere.gap === worst!.gap,
    `${what} the stage calls the worst place ${elsewhere?.word}, the check ${worst?.verdict}`,
  );

  for (const row of partRows(gaps, report)) {
    const here = gaps.filter(({ part }) => part === row.part).map(({ gap }) => gap);
    truth.claim(
      row.now?.gap === Math.min(...here),
      `${what} the row of ${row.part} tells ${row.now?.gap} now`,
    );
    const mark = partMark(row, model.setup.allowance)!;
    const entries = report?.parts.filter(({ part }) => part === row.part) ?? [];
    const telling = entries.filter(({ verdict }) => verdict === mark.word).map(({ gap }) => gap);
    const isTold = entries.length === 0 || mark.gap === Math.min(...telling) || always.size > 0;
    truth.claim(isTold, `the row of ${row.part} tells ${mark.gap}, the check ${telling}`);
    truth.claim(
      (mark.word === "rubs") === mark.gap < 0 &&
        (mark.word === "rubs" || entries.every(({ gap }) => gap >= 0)),
      `the row of ${row.part} is marked ${mark.word}`,
    );
    truth.claim(
      mark.word !== "clear" || entries.every(({ verdict }) => verdict === "clear"),
      `the row of ${row.part} is marked clear, which the check does not say`,
    );
  }
}

/** Cells of the map with what they are marked, and the lines between them. @param report null = not at hand */
export function judgeMap(truth: Truth, report: CheckReport | null): void {
  const map = mapOf(truth.model, { rows: 4, cols: 5 });
  const isAll = (report?.limitedBy ?? []).length === 0;
  map.travels.forEach((travel, row) => {
    map.steers.forEach((steer, col) => {
      const cell = row * map.steers.length + col;
      const least = truth.at(travel, steer)?.gaps[0]?.gap ?? Number.NaN;
      const told = Math.min(map.left.gap[cell]!, map.right.gap[cell]!);
      const at = `${travel.toFixed(1)} mm, steer ${steer}`;
      if (Number.isNaN(least)) {
        truth.claim(!Number.isFinite(told), `the map tells ${told} where none stands`);
        return;
      }
      truth.claim(Math.abs(told - least) < NEAR, `the map tells ${told} at ${at}, the least gap is ${least}`);
      const canBe = truth.canBe(travel, steer);
      if (map.pastLimit !== null)
        truth.claim(map.pastLimit.passed[cell]! < 0 === canBe, `the map marks limits otherwise at ${at}`);
      if (report !== null && (canBe || isAll)) judgeCovered(truth, report, travel, steer);
    });
  });
  for (const side of ["left", "right"] as const) {
    const isBelow = map[side].gap.every((gap) => Number.isNaN(gap) || gap < 0);
    truth.claim(!isBelow || contoursOf(map, map[side], 0).length === 0, "a line where all is below it");
  }
}

/** A pose that the check counts: no gap there is worse than the check's bound of that pair. */
export function judgeCovered(truth: Truth, report: CheckReport, travel: number, steer: number): void {
  for (const { side, part, gap } of truth.at(travel, steer)?.gaps ?? []) {
    const entry = report.parts.find((one) => one.side === side && one.part === part);
    const at = `${travel.toFixed(2)} mm, steer ${steer.toFixed(3)}`;
    if (entry === undefined) {
      truth.claim(false, `the check leaves out ${side} ${part}, which has a gap at ${at}`);
      continue;
    }
    truth.claim(
      gap >= entry.bound - NEAR,
      `${side} ${part} is ${gap} at ${at}, below the bound ${entry.bound}`,
    );
  }
}
