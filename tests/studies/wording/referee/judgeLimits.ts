import { KEPT } from "../../../../src/studies/limits/frontEndLimit.ts";
import { type LimitsReport, limitMargins } from "../../../../src/studies/limits/limitsOf.ts";
import { isPassed, type LimitOverRange } from "../../../../src/studies/limits/limitsPassed.ts";
import {
  firstLimit,
  limitMark,
  limitPlace,
  limitRows,
  limitsState,
} from "../../../../src/studies/wording/limitRows.ts";
import { borderAt } from "../../../../src/studies/wording/stopTexts.ts";
import type { Truth } from "./truth.ts";

/** mm, rad. What the search for a least margin leaves open. */
const OPEN = { length: 0.06, angle: 3e-4 } as const;

/** Every limit of the list at a pose: what is left now, the least over the range and where, how it is marked. */
export function judgeLimits(
  truth: Truth,
  report: LimitsReport,
  poses: readonly (readonly [travel: number, steer: number])[],
): void {
  const state = limitsState(report);
  for (const limit of report.overall) judgeOverRange(truth, limit);
  for (const [travel, steer] of poses) {
    const margins = truth.margins(travel, steer);
    if (margins === null) continue;
    const isInRange = travel >= truth.model.setup.travel.droop && travel <= truth.model.setup.travel.bump;
    truth.claim(
      state !== "kept" || !isInRange || truth.canBe(travel, steer),
      `every limit told as kept, but one is passed at ${travel.toFixed(1)} mm, steer ${steer}`,
    );
    const rows = limitRows(limitMargins(truth.model, travel, steer), report.overall);
    for (const row of rows) {
      const mine = margins.filter(({ name }) => name === row.name).map(({ margin }) => margin);
      const least = Math.min(...mine);
      truth.claim(row.now?.margin === least, `${row.name} told ${row.now?.margin} now, is ${least}`);
      truth.claim((limitMark(row) === "rubs") === least < -KEPT, `${row.name} is marked ${limitMark(row)}`);
      const { overall } = row;
      if (overall === null) continue;
      truth.claim(
        limitMark(row) !== "clear" || !report.overall.some((one) => one.name === row.name && isPassed(one)),
        `${row.name} is marked clear and passed somewhere`,
      );
      truth.claim(
        !isInRange ||
          overall.cutShort === true ||
          overall.atBorder ||
          overall.margin <= least + OPEN[overall.measure],
        `${row.name} told ${overall.margin} at the least, is ${least} at ${travel.toFixed(1)} mm, steer ${steer}`,
      );
    }
    const first = firstLimit(limitMargins(truth.model, travel, steer).ok ? margins : []);
    truth.claim(
      margins.every(({ share }) => first !== null && first.limit.share <= share),
      `${first?.limit.name} told as first, another has less in hand`,
    );
  }
  judgeFirstMet(truth, report);
}

function judgeOverRange(truth: Truth, limit: LimitOverRange): void {
  const { name, side, margin, travel, steer } = limit;
  const marginAt = (mm: number, share: number) =>
    truth.margins(mm, share)?.find((one) => one.name === name && one.side === side)?.margin ?? null;
  const there = marginAt(travel, steer);
  truth.claim(
    there === null || Math.abs(there - margin) < 1e-6,
    `${side} ${name} told ${margin}, is ${there} at its own pose`,
  );
  const place = limitPlace(limit, truth.format);
  switch (place.kind) {
    case "least":
      truth.claim(!isPassed(limit), `${side} ${name} is passed, and told as kept`);
      break;
    case "most":
      truth.claim(isPassed(limit), `${side} ${name} is kept, and told as passed`);
      break;
    case "from": {
      const { told } = place;
      truth.claim(isPassed(limit), `${side} ${name} is kept, and told as passed`);
      const isBefore =
        Math.abs(told.travel) <= Math.abs(place.travel) + 0.004 &&
        Math.abs(told.steer) <= Math.abs(place.steer) + 0.004;
      truth.claim(isBefore, `${side} ${name} told as passed later than it is`);
      // Straight ahead all is kept up to where it is told.
      const kept = marginAt(place.steer === 0 ? told.travel : place.travel, told.steer);
      truth.claim(kept === null || kept >= -1e-3, `${side} ${name} is passed by ${kept} before it is told`);
      break;
    }
  }
}

/** What is met first from each stance: all up to there keeps every limit. */
function judgeFirstMet(truth: Truth, { stances }: LimitsReport): void {
  for (const { name, travel, first } of stances) {
    truth.claim((first !== null) === truth.canBe(travel, 0), `${name}: tells of ways from where none begins`);
    if (first === null) continue;
    for (const way of ["bump", "droop", "left", "right"] as const) {
      const isTravel = way === "bump" || way === "droop";
      const from = isTravel ? travel : 0;
      const to = borderAt(first[way], isTravel ? "travel" : "steer", from, truth.format);
      const isShort = Math.sign(to - from) !== Math.sign(first[way].at - from) && to !== from;
      if (isShort) continue;
      for (const share of [0, 0.25, 0.5, 0.75, 1]) {
        const at = from + (to - from) * share;
        const canBe = isTravel ? truth.canBe(at, 0) : truth.canBe(travel, at);
        truth.claim(canBe, `${name}, ${way}: told free to ${to}, but not at ${at}`);
      }
    }
  }
}
