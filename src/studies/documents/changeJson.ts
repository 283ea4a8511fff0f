import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { AlsoMoves, ChangeReport, FoundChange } from "../change/changeTypes.ts";

/** Changes as `change --json` prints them: values in the file's units or degrees, least effort first. */
export function changeJson({ verdict, changes, without, cutShort }: ChangeReport, units: LengthUnit) {
  return {
    units,
    verdict,
    ...(cutShort ? { cutShort: true } : {}),
    changes: changes.map((change) => oneJson(change, units)),
    without,
  };
}

function oneJson({ set, trim, gap, bound, alsoMoves }: FoundChange, units: LengthUnit) {
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const fields = (which: "from" | "to") =>
    Object.fromEntries(
      set.map((one) => [
        one.key,
        one.kind === "angle" ? degFromRad(one[which]) : unitsFromMm(one[which], units),
      ]),
    );
  return {
    set: fields("to"),
    from: fields("from"),
    ...(trim === null ? {} : { trim: { part: trim.part, depth: unitsFromMm(trim.depth, units) } }),
    gap: length(gap),
    bound: length(bound),
    alsoMoves: alsoMoves.map((moves) => movesJson(moves, units)),
  };
}

function movesJson(moves: AlsoMoves, units: LengthUnit) {
  if (moves.what === "fenderCover" || moves.what === "limit") return moves;
  const told = (value: number) =>
    moves.what === "bumpSteer" ? degFromRad(value) : unitsFromMm(value, units);
  return { what: moves.what, from: told(moves.from), to: told(moves.to) };
}
