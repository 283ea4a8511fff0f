import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { LINES, type Series } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";

/** What tells a truck's curve from those of others laid over it. */
type Look = Required<Pick<Series, "of" | "line" | "isMain">>;

const BROKEN = LINES.slice(1);

/**
 * The looks of trucks laid over each other, the first drawn solid and heavy: color and mark by a variant's place in the setup, so that
 * it looks the same whatever else is shown; by the place in the list where that tells no two apart.
 */
export function looksOf(trucks: readonly Truck[]): readonly Look[] {
  const places = trucks.map(placeOf);
  const isTold = new Set(places).size === places.length;
  return trucks.map((_, i) => {
    const of = isTold ? places[i]! : i;
    return { of, line: i === 0 ? LINES[0] : BROKEN[of % BROKEN.length]!, isMain: i === 0 };
  });
}

/** 0 = the setup without a variant. */
function placeOf({ document, setup: { variant } }: Truck): number {
  return variant === null || document === null ? 0 : variantNames(document).indexOf(variant) + 1;
}
