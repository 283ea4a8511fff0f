import type { Model } from "./model.ts";

/**
 * The left side of one model beside the right side of another of the same truck: arms or knuckles that differ from side to
 * side. `setup` and `frontEnd.input` tell of the left one.
 */
export function joinedModel(left: Model, right: Model): Model {
  const { frontEnd, pairs } = left;
  return {
    ...left,
    frontEnd: { ...frontEnd, right: right.frontEnd.right },
    // Both lists have the same pairs in the same order.
    pairs: pairs.map((pair, i) => (pair.side === "left" ? pair : right.pairs[i]!)),
    mirrored: false,
  };
}
