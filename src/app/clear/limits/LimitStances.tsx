import { memo } from "react";
import type { LimitStance } from "../../../studies/limits/limitsOf.ts";
import type { Model } from "../../../studies/model/model.ts";
import { bindsText, firstMetText } from "../../../studies/wording/limitTexts.ts";
import { lockText } from "../../../studies/wording/poseWords.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

export type LimitStancesProps = {
  stances: readonly LimitStance[];
  model: Model;
  format: LengthFormat;
};

/** What is met first at each stance, straight ahead and at each lock, and on the ways from there. */
export const LimitStances = memo(function LimitStances({ stances, model, format }: LimitStancesProps) {
  const setPose = useWorkbench((s) => s.setPose);
  return (
    <>
      <h3>What is met first at each stance</h3>
      <ul className="limit-stances">
        {stances.map(({ name, travel, poses, first }) => (
          <li key={name}>
            <strong>{name}</strong>
            <p className="fold-fine">{keepTogether(standsText(travel, 0, model, format))}</p>
            <ul>
              {poses.map((pose) => (
                <li key={pose.steer}>
                  <button type="button" className="fold-link" onClick={() => setPose(travel, pose.steer)}>
                    {lockText(pose.steer)}
                  </button>
                  : {keepTogether(bindsText(pose, format))}
                </li>
              ))}
            </ul>
            {first && <p className="fold-fine">{firstMetText(first, travel, format)}</p>}
          </li>
        ))}
      </ul>
    </>
  );
});
