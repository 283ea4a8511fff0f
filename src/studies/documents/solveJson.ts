import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { type Solved, type SolveReport, targetMeasure, targetTravel } from "../solve/solveTypes.ts";
import { movesJson } from "./changeJson.ts";
import { setByJson } from "./windowJson.ts";

/**
 * What `solve --json` prints: values and numbers in the file's units or degrees. `sure` of a value: `exact` at the pose, or `proven` on
 * both sides, which has `bound`, `beyond` and `by`; of bump steer `least`. `between` as of a window.
 */
export function solveJson(report: SolveReport, units: LengthUnit) {
  const {
    field,
    kind,
    now,
    from,
    to,
    target,
    reachedNow,
    found,
    nearest,
    isUnmoved,
    between,
    cutShort,
    asked,
  } = report;
  const of = (measure: "length" | "angle") => (value: number) =>
    measure === "angle" ? degFromRad(value) : unitsFromMm(value, units);
  const [told, reach] = [of(kind), of(targetMeasure(target))];
  const solved = ({ value, reached, bracket, also }: Solved) => ({
    value: told(value),
    reached: reach(reached),
    ...(bracket
      ? { bound: reach(bracket.bound), beyond: told(bracket.beyond), by: setByJson(bracket.by, units) }
      : {}),
    ...(also
      ? {
          also: also.numbers.map(({ what, from, to, isUnusual }) => ({
            what,
            from: of(what === "camber" ? "angle" : "length")(from),
            to: of(what === "camber" ? "angle" : "length")(to),
            ...(isUnusual ? { unusual: true } : {}),
          })),
          alsoMoves: also.moves.map((moves) => movesJson(moves, units)),
        }
      : {}),
  });
  return {
    units,
    field,
    now: told(now),
    ...(cutShort ? { cutShort: true } : {}),
    for: target.of,
    ...("value" in target ? { wanted: reach(target.value) } : {}),
    ...("at" in target ? { travel: unitsFromMm(targetTravel(target), units) } : {}),
    reachedNow: reachedNow === null ? null : reach(reachedNow),
    from: told(from),
    to: told(to),
    ...(asked ? { askedFrom: told(asked.from), askedTo: told(asked.to) } : {}),
    sure: SURE[target.of === "gap" || target.of === "bumpSteer" ? target.of : "pose"],
    found: found.map(solved),
    ...(found.length > 0 ? {} : { nearest: nearest && solved(nearest), unmoved: isUnmoved }),
    between: between.rank,
    ...(between.rank === "sampled" ? { sampledEvery: told(between.step) } : {}),
  };
}

const SURE = { gap: "proven", bumpSteer: "least found", pose: "exact" } as const;
