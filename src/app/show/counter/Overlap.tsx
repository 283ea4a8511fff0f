import { isOverlap } from "../../../studies/wording/pictureTexts.ts";
import type { BodyDrawing } from "./bodyDrawing.ts";
import { pathOf } from "./pathOf.ts";
import type { Pictured } from "./pictures.ts";

export type OverlapProps = {
  pictured: Pictured;
  body: readonly BodyDrawing[];
  /** Before the names of hatching and tires. */
  id: string;
  /** mm to a pixel. */
  perPx: number;
};

/** Pixels. A smaller round could not be seen to be filled. */
const LEAST = 10;

/**
 * Where a tire and the body are in one place: the body's cut as far as it lies in the tire, and about the mark a round as deep as the
 * part is in it.
 */
export function Overlap({ pictured: { letter, drawing, mark }, body, id, perPx }: OverlapProps) {
  const gap = mark?.entry.gap ?? 0;
  // By its style: an attribute would give way to what all lines of the picture have.
  const fill = `url(#${id}overlap-${letter})`;
  return (
    <g className="wheel-overlap" clipPath={`url(#${id}tire-${letter})`}>
      {body.flatMap(({ name, cuts }) =>
        cuts.map(({ points, isClosed }, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and keep their order
            key={`${name} ${i}`}
            style={{ fill: isClosed ? fill : "none" }}
            d={pathOf(points, isClosed)}
          />
        )),
      )}
      {drawing.gap !== null && isOverlap(gap) && (
        <circle
          cx={drawing.gap.onPart[0]}
          cy={drawing.gap.onPart[1]}
          r={Math.max(-gap, LEAST * perPx)}
          style={{ fill }}
        />
      )}
    </g>
  );
}
