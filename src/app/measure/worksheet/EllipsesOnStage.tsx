import { useEffect } from "react";
import { isMark } from "../../../setup/blocks/readings/readingPoint.ts";
import type { Measured } from "../../../studies/measure/measured.ts";
import { choleskyOf } from "../../../studies/numeric/leastSquares.ts";
import { pointWord } from "../../../studies/wording/worksheetWords.ts";
import { measuredView } from "../../state/measuredView.ts";

/** Has the stage draw how far each point may be from where it is drawn, as long as this is shown. */
export function EllipsesOnStage({ measured }: { measured: Measured }) {
  useEffect(() => {
    const named = new Set<string>();
    const ellipses = measured.points
      // A mark is nothing of the truck; of a point that nobody read there is nothing to tell but that: its part is dashed.
      .filter(
        ({ point, standing }) =>
          !isMark(point) && standing.some((one) => one === "measured" || one === "partly"),
      )
      .map(({ point, side, at, covariance, standing }) => {
        const hand = side === "right" ? -1 : 1;
        const [x, y, z] = choleskyOf(covariance);
        const isAssumed = standing.some((one) => one === "assumed" || one === "partly");
        // A part of many points is named once.
        const word = pointWord(point);
        const name = isAssumed && !named.has(word) ? word : "";
        named.add(name);
        return {
          name,
          at: [at[0], hand * at[1], at[2]] as const,
          axes: [x, [hand * y[0], hand * y[1], hand * y[2]] as const, z] as const,
          isAssumed,
        };
      });
    measuredView.setState({ ellipses });
    return () => measuredView.setState({ ellipses: [] });
  }, [measured]);
  return null;
}
