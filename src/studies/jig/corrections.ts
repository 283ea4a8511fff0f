import type { JigSetup } from "../../setup/types/asBuiltTypes.ts";
import { type FittedKnuckle, knuckleOf, UNKNOWNS, type Unknown, valuesOf } from "./fitKnuckle.ts";
import { type BuiltKnuckle, jigReadingsOf, turned } from "./jigReadings.ts";
import { type JigRow, jigRows } from "./jigSheet.ts";

/** One dimension of a knuckle to change, by ordered − built, mm or rad. */
export interface Correction {
  readonly key: Unknown;
  readonly by: number;
  /** Of toe: the pin alone is turned, and the steering arm stays where it stands on the jig; else it turns with the pin. */
  readonly isPinAlone?: boolean;
}

/** What to change of a knuckle that fails, and what its checks would say then. */
export interface Corrections {
  /** The fewest found, the one that helps most first; empty = the readings do not tell what is off, or nothing fails. */
  readonly changes: readonly Correction[];
  /** Checks that would fail still. */
  readonly failing: readonly JigRow["key"][];
}

/** A reading beside its tolerance, and how far it is off. mm and radians. */
export interface CheckedReading extends Pick<JigRow, "key" | "tolerance"> {
  readonly off: number;
}

/** Whether a dimension is off by more than its readings can be wrong. @param within one standard deviation; null = left open */
function isOff(off: number, within: number | null): boolean {
  return within !== null && Math.abs(off) > 2 * within;
}

/**
 * What brings every dimension that is off for certain back to the order. Where the pin is to be turned it is turned alone: the
 * steering arm is moved by what its own place on the jig is off.
 */
export function toTheOrder(fit: FittedKnuckle, ordered: BuiltKnuckle): readonly Correction[] {
  const toe = UNKNOWNS.indexOf("toe");
  const pinFrame = movesOf(fit.knuckle, ordered, false);
  const isTurned = isOff(pinFrame[toe]!.by, fit.within.toe);
  const moves = isTurned ? movesOf(fit.knuckle, ordered, true) : pinFrame;
  return moves.filter(({ key, by }) => isOff(by, fit.within[key]));
}

/** Every dimension with how far it is from the order; of the steering arm by its place on the jig, where the pin is turned alone. */
function movesOf(built: BuiltKnuckle, ordered: BuiltKnuckle, isPinAlone: boolean): readonly Correction[] {
  const of = (knuckle: BuiltKnuckle) =>
    valuesOf(isPinAlone ? { ...knuckle, steeringArm: turned(knuckle.steeringArm, knuckle.toe) } : knuckle);
  const [from, to] = [of(built), of(ordered)];
  return UNKNOWNS.map((key, i) => ({
    key,
    by: to[i]! - from[i]!,
    ...(key === "toe" && isPinAlone ? { isPinAlone } : {}),
  }));
}

/** A knuckle after some of its moves. */
function moved(built: BuiltKnuckle, moves: readonly Correction[]): BuiltKnuckle {
  const isPinAlone = moves.some((move) => move.isPinAlone);
  const from = isPinAlone ? { ...built, steeringArm: turned(built.steeringArm, built.toe) } : built;
  const values = valuesOf(from);
  for (const { key, by } of moves) values[UNKNOWNS.indexOf(key)]! += by;
  const knuckle = knuckleOf(values);
  return isPinAlone ? { ...knuckle, steeringArm: turned(knuckle.steeringArm, -knuckle.toe) } : knuckle;
}

/** A share of a tolerance that nobody reads: a check that passed on its tolerance asks for nothing by it. */
const ON_TOLERANCE = 0.01;

/**
 * The dimensions that brought back to the order make a knuckle's checks pass: of those that are off for certain the one that
 * helps most, until nothing fails or nothing helps, and none of them that could stay.
 * @param clampedAt mm up from the lower ball joint center, where the straightedge stood
 */
export function correctionsOf(
  checks: readonly CheckedReading[],
  fit: FittedKnuckle,
  ordered: BuiltKnuckle,
  clampedAt: number,
  jig: JigSetup,
): Corrections {
  const readsOf = (knuckle: BuiltKnuckle) =>
    new Map(
      jigRows(jigReadingsOf(knuckle, jig, clampedAt), jig.tolerances).map((row) => [row.key, row.mustRead]),
    );
  const before = readsOf(fit.knuckle);
  /** How far each check would be past its tolerance, in tolerances; 0 = it passes. */
  const past = (moves: readonly Correction[]) => {
    const reads = readsOf(moved(fit.knuckle, moves));
    return checks.map(({ key, off, tolerance }) => {
      const share = Math.abs(off + reads.get(key)! - before.get(key)!) / tolerance - 1;
      return share > ON_TOLERANCE ? share : 0;
    });
  };
  const costOf = (moves: readonly Correction[]) => past(moves).reduce((all, one) => all + one, 0);
  /** The fewest that help most, of the moves with the pin turned alone or with its arm. */
  const fewest = (isPinAlone: boolean) => {
    const candidates = movesOf(fit.knuckle, ordered, isPinAlone).filter(({ key, by }) =>
      isOff(by, fit.within[key]),
    );
    // Without a turn of the pin there is nothing that the arm could be left out of.
    if (isPinAlone && !candidates.some(({ key }) => key === "toe")) return null;
    let moves: readonly Correction[] = [];
    let cost = costOf(moves);
    while (cost > 0) {
      const tried = candidates
        .filter((one) => !moves.includes(one))
        .map((one) => ({ moves: [...moves, one], cost: costOf([...moves, one]) }))
        .sort((a, b) => a.cost - b.cost)[0];
      if (tried === undefined || tried.cost >= cost) break;
      ({ moves, cost } = tried);
    }
    for (const one of moves) {
      const without = moves.filter((other) => other !== one);
      if (costOf(without) <= cost) moves = without;
    }
    return { moves, cost };
  };
  const withArm = fewest(false)!;
  const alone = fewest(true);
  // A pin is cut and turned without its arm, unless both came out turned.
  const isAloneBetter =
    alone !== null &&
    (alone.cost < withArm.cost ||
      (alone.cost === withArm.cost && alone.moves.length <= withArm.moves.length));
  const { moves } = isAloneBetter ? alone : withArm;
  const left = past(moves);
  return {
    changes: moves,
    failing: checks.flatMap(({ key }, i) => (left[i]! > 0 ? [key] : [])),
  };
}
