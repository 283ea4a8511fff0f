import "./weights.css";
import { useMemo } from "react";
import { type VariantWeight, weightsCompared } from "../../../studies/strength/variantWeights.ts";
import {
  unsprungSentence,
  variantTitle,
  WEIGHTS_COMMON,
  WEIGHTS_HOW,
  weightDifference,
  weightText,
} from "../../../studies/wording/weightWords.ts";
import { useVariantTrucks } from "../../choose/compare/useVariantTrucks.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import type { KnuckleView } from "../../work/knuckleViewOf.ts";
import { useAnswers } from "../../work/useAnswer.ts";
import { KnucklePicture, type PictureFrame } from "./KnucklePicture.tsx";

/** A card a variant: picture, weight, difference in words; all pictures to one scale. */
export function WeightsBody() {
  const columns = useVariantTrucks(useWorkbench((s) => s.document));
  const trucks = useMemo(() => columns.flatMap(({ truck }) => truck ?? []), [columns]);
  const views = useAnswers("knuckleView", trucks);
  const weights = useMemo(
    () => weightsCompared(trucks.map(({ setup }) => ({ name: setup.variant, setup }))),
    [trucks],
  );
  const frame = useMemo(
    () => frameOf(views.flatMap(({ answer }) => (answer ? [answer.bounds] : []))),
    [views],
  );
  if (weights.every(({ mass }) => mass === null))
    return (
      <p role="status">
        No weight yet: the setup has no <code>build</code> with members, plates or a pin.
      </p>
    );
  return (
    <div className="weights">
      <ul className="weights-list">
        {weights.map((weight, i) => (
          <Card key={weight.name ?? ""} weight={weight} view={views[i]?.answer ?? null} frame={frame} />
        ))}
      </ul>
      {columns.some(({ truck }) => truck === null) && (
        <p className="fold-fine">A variant that does not go together is not weighed.</p>
      )}
      <p className="fold-fine">
        {WEIGHTS_HOW} {WEIGHTS_COMMON}
      </p>
    </div>
  );
}

type CardProps = { weight: VariantWeight; view: KnuckleView | null; frame: PictureFrame | null };

function Card({ weight, view, frame }: CardProps) {
  const { units } = useFormat();
  const unsprung = unsprungSentence(weight, units);
  return (
    <li className="weights-card">
      {frame && view ? (
        <KnucklePicture view={view} frame={frame} />
      ) : (
        <span className="weights-blank">{weight.mass === null ? "nothing to draw" : "drawing…"}</span>
      )}
      <h3>{variantTitle(weight.name)}</h3>
      {weight.mass !== null && <p className="weights-number">{weightText(weight.mass, units)}</p>}
      <p>{weightDifference(weight, units)}</p>
      {unsprung && <p className="weights-fine">{unsprung}</p>}
    </li>
  );
}

/** What holds every picture: one scale for all; null = there is none. */
function frameOf(bounds: readonly KnuckleView["bounds"][]): PictureFrame | null {
  if (bounds.length === 0) return null;
  const low = (at: 0 | 1) => Math.min(...bounds.map((one) => one[at]));
  const high = (at: 2 | 3) => Math.max(...bounds.map((one) => one[at]));
  return { left: low(0), bottom: low(1), right: high(2), top: high(3) };
}
