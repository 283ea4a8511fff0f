import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { AlsoMoves, ChangeReport, FoundChange, Smaller, TrimmedPart } from "../change/changeTypes.ts";

/** Changes as `change --json` prints them: values in the file's units or degrees, least effort first. */
export function changeJson(
  { verdict, changes, without, isPaired, cutShort }: ChangeReport,
  units: LengthUnit,
) {
  return {
    units,
    verdict,
    ...(cutShort ? { cutShort: true } : {}),
    changes: changes.map((change) => oneJson(change, units)),
    without: without.map(({ key }) => key),
    tried: without.map(({ key, kind, from, to, step }) => {
      const told = (value: number) => (kind === "angle" ? degFromRad(value) : unitsFromMm(value, units));
      return { field: key, from: told(from), to: told(to), ...(step === null ? {} : { step: told(step) }) };
    }),
    ...(isPaired ? { paired: true } : {}),
  };
}

function oneJson({ set, trim, gap, bound, smaller, alsoMoves }: FoundChange, units: LengthUnit) {
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
    ...(trim === null ? {} : { trim: trimJson(trim, units) }),
    gap: length(gap),
    bound: length(bound),
    smaller: smallerJson(smaller, set, units),
    alsoMoves: alsoMoves.map((moves) => movesJson(moves, units)),
  };
}

function smallerJson(smaller: Smaller, set: FoundChange["set"], units: LengthUnit) {
  const told = (value: number, i = 0) =>
    set[i]?.kind === "angle" ? degFromRad(value) : unitsFromMm(value, units);
  if (smaller.rank === "stepped") return { rank: smaller.rank, steps: smaller.steps.map(told) };
  if (smaller.rank === "proven pair") return { rank: smaller.rank, within: smaller.within.map(told) };
  if (smaller.rank === "proven") return { rank: smaller.rank, within: told(smaller.within) };
  return smaller.rank === "sampled" ? { rank: smaller.rank, step: told(smaller.step) } : smaller;
}

/** Regions in vehicle axes; the edge that is left, where it is a path, as the setup's body would hold it. */
function trimJson({ part, depth, regions, left }: TrimmedPart, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const points = (flat: Float64Array) =>
    Array.from({ length: flat.length / 3 }, (_, i) => [...flat.subarray(3 * i, 3 * i + 3)].map(length));
  return {
    part,
    depth: length(depth),
    regions: regions.map(({ side, kind, places, goesBeyond }) => ({
      side,
      kind,
      outlines: places.map(points),
      goesBeyond,
    })),
    ...(left === null ? {} : { left: left.part.points.map((point) => point.map(length)) }),
  };
}

export function movesJson(moves: AlsoMoves, units: LengthUnit) {
  if (moves.what === "fenderCover" || moves.what === "limit") return moves;
  const told = (value: number) =>
    moves.what === "bumpSteer" ? degFromRad(value) : unitsFromMm(value, units);
  const ordered = moves.what === "drop" ? { ordered: told(moves.ordered) } : {};
  return { what: moves.what, from: told(moves.from), to: told(moves.to), ...ordered };
}
