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

/** Pixels. Less than this across could not be seen. */
const LEAST = 5;
/** mm. As deep as this it touches, and does not overlap. */
const JUST = 0.05;

/**
 * Where a tire and the body are in one place: the body's cut as far as it lies in the tire, and about the mark a round as deep as the
 * part is in it.
 */
export function Overlap({ pictured: { letter, drawing, mark }, body, id, perPx }: OverlapProps) {
  const gap = mark?.entry.gap ?? 0;
  const isIn = drawing.gap !== null && gap < -JUST;
  const fill = `url(#${id}overlap)`;
  return (
    <g className="wheel-overlap" clipPath={`url(#${id}tire-${letter})`}>
      {body.flatMap(({ name, cuts }) =>
        cuts.map(({ points, isClosed }, i) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name of their own and keep their order
            key={`${name} ${i}`}
            fill={isClosed ? fill : "none"}
            d={pathOf(points, isClosed)}
          />
        )),
      )}
      {isIn && (
        <circle
          cx={drawing.gap.onPart[0]}
          cy={drawing.gap.onPart[1]}
          r={Math.max(-gap, LEAST * perPx)}
          fill={fill}
        />
      )}
    </g>
  );
}
