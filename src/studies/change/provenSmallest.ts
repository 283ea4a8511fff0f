import type { Budget } from "../numeric/budget.ts";
import { changedSetup, type Setting, type TruckToVary } from "../window/truckOverField.ts";
import { WINDOW_TOLERANCE } from "../window/windowField.ts";
import { windowOfField } from "../window/windowOf.ts";
import type { Smaller } from "./changeTypes.ts";

/** Tolerances within which the end of a window is the change that was found. */
const SAME = 3;

/** Tolerances by which a change of a window's end goes on into it. */
const INTO = 0.5;

/**
 * What is known of the values between now and a change that clears: the window of the field over just these. Where it fits nearer
 * to now than the change found, and a check says so too, that is the change.
 */
export function provenSmallest(
  truck: TruckToVary,
  [field, to]: Setting,
  budget: Budget,
  clears: (setting: Setting) => boolean,
): { readonly setting: Setting; readonly smaller: Smaller } {
  const tolerance = WINDOW_TOLERANCE[field.kind];
  const searched = { setting: [field, to] as const, smaller: { rank: "searched" } as const };
  const [from, end] = [Math.min(field.now, to), Math.max(field.now, to)];
  if (!(end - from > tolerance)) return searched;
  const window = windowOfField(truck, field, { from, to: end, budget });
  if (window.cutShort) return searched;
  const ends = window.fits.flatMap((fit) => [fit.from, fit.to]);
  const away = (value: number) => Math.abs(value - field.now);
  const nearest = ends.length === 0 ? to : ends.reduce((best, one) => (away(one) < away(best) ? one : best));
  const smaller: Smaller =
    window.between.rank === "proven"
      ? { rank: "proven", within: SAME * tolerance }
      : { rank: "sampled", step: window.between.step };
  if (away(to) - away(nearest) <= SAME * tolerance) return { setting: [field, to], smaller };
  const inner = nearest + Math.sign(to - field.now) * INTO * tolerance;
  return clears([field, inner]) ? { setting: [field, inner], smaller } : searched;
}

/** Fields that take poses away, the more the farther they are brought back, and move nothing else: what is clear with less is with more. */
const PRUNES: ReadonlySet<string> = new Set([
  "travel.bump",
  "travel.droop",
  "limits.bumpStop.travel",
  "limits.steeringStop.angle",
  "truck.steering.stroke",
  "truck.steering.swing",
]);

/**
 * Whether it is proven of two changes that clear together that no other two do of which neither is larger, either way, up to `SAME`
 * tolerances of each. Where one of them takes poses away, two windows of the other tell: with the first at its end, no value
 * nearer to now fits, so none does with less of the first; with the first a little less, no value up to the end does.
 * @param misses whether it is proven that the truck does not clear with both
 */
export function isSmallestPair(
  truck: TruckToVary,
  pair: readonly [Setting, Setting],
  budget: Budget,
  misses: (settings: readonly Setting[]) => boolean,
): boolean {
  if (truck.isAligned) return false;
  const [pruning, other] = PRUNES.has(pair[0][0].key) ? pair : [pair[1], pair[0]];
  if (!PRUNES.has(pruning[0].key)) return false;
  if (PRUNES.has(other[0].key)) return misses([pruning, less(other)]) && misses([less(pruning), other]);
  const [field, to] = other;
  const away = Math.abs(to - field.now);
  const slack = SAME * WINDOW_TOLERANCE[field.kind];
  const fitsWith = (setting: Setting) => {
    const changed = withSetting(truck, setting);
    if (changed === null) return null;
    const from = Math.max(field.now - away, field.least + INSIDE * away);
    const end = Math.min(field.now + away, field.most - INSIDE * away);
    const window = windowOfField(changed, field, { from, to: end, budget: budget.share(2), isOpened: false });
    return window.cutShort || window.between.rank !== "proven" ? null : window.fits;
  };
  const isNear = (value: number) =>
    Math.abs(value - field.now) >= away - slack && value > field.now === to > field.now;
  const atEnd = fitsWith(pruning);
  if (atEnd === null || !atEnd.every((fit) => isNear(fit.from) && isNear(fit.to))) return false;
  return fitsWith(less(pruning))?.length === 0;
}

/** Share of a range left off an end that the file may not say itself. */
const INSIDE = 1e-6;

/** How near to a pair nothing is told of another one, of each. */
export function pairSlack(pair: readonly Setting[]): readonly number[] {
  return pair.map(([{ kind }]) => SAME * WINDOW_TOLERANCE[kind]);
}

function less([field, to]: Setting): Setting {
  return [field, to - Math.sign(to - field.now) * SAME * WINDOW_TOLERANCE[field.kind]];
}

function withSetting(truck: TruckToVary, [field, value]: Setting): TruckToVary | null {
  const setup = changedSetup(truck, [{ path: field.path, put: (typed) => field.put(typed, value) }]);
  return setup.ok ? { ...truck, document: field.put(truck.document, value), setup: setup.value } : null;
}
