import type { Sketch } from "../../geometry/sketch.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { jigFromAbove } from "./jigFromAbove.ts";
import { jigFromFront } from "./jigFromFront.ts";
import type { JigSheet } from "./jigSheet.ts";
import { type JigSketchWords, VIEW } from "./jigView.ts";

/** A jig drawn to its knuckle, from the front and from above; a right knuckle is the mirror image. */
export interface JigSketches {
  readonly fromFront: Sketch;
  readonly fromAbove: Sketch;
}

export function jigSketches(sheet: JigSheet, side: Side, say: JigSketchWords): JigSketches {
  const hand = side === "left" ? 1 : -1;
  return {
    fromFront: { ...VIEW, shapes: jigFromFront(sheet, hand, say) },
    fromAbove: { ...VIEW, shapes: jigFromAbove(sheet, hand, say) },
  };
}
