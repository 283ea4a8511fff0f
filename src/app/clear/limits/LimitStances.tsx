import type { BindsFirst, LimitStance } from "../../../studies/limits/limitsOf.ts";
import { lockText } from "../../../studies/wording/poseText.ts";
import { borderText } from "../../../studies/wording/stopTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { leastText } from "./leastText.ts";

export type LimitStancesProps = {
  stances: readonly LimitStance[];
  format: LengthFormat;
};

/** What binds first at each stance, straight ahead and at each lock, and what is met first from there. */
export function LimitStances({ stances, format }: LimitStancesProps) {
  const setPose = useWorkbench((s) => s.setPose);
  return (
    <>
      <h3>What binds first at each stance</h3>
      <ul className="limit-stances">
        {stances.map(({ name, travel, poses, first }) => (
          <li key={name}>
            <strong>{name}</strong>
            <ul>
              {poses.map((pose) => (
                <li key={pose.steer}>
                  <button type="button" className="fold-link" onClick={() => setPose(travel, pose.steer)}>
                    {lockText(pose.steer)}
                  </button>
                  :{" "}
                  {pose.ok
                    ? leastText(pose.margins, format)
                    : `out of reach of the ${pose.side} ${pose.joint}`}
                </li>
              ))}
            </ul>
            {first && <p className="fold-fine">{firstMetText(first, travel, format)}</p>}
          </li>
        ))}
      </ul>
    </>
  );
}

/** What is met first on the four ways from a stance; ways on which nothing is met are not told. */
function firstMetText(first: BindsFirst, travel: number, format: LengthFormat): string {
  const ways = [
    ["going lower", first.bump, "travel"],
    ["going higher", first.droop, "travel"],
    ["steering left", first.left, "steer"],
    ["steering right", first.right, "steer"],
  ] as const;
  const met = ways.filter(([, border]) => border.stop !== "end");
  if (met.length === 0) return "From here nothing is met up to the ends of travel and both locks.";
  return `Met first from here: ${met.map(([way, border, along]) => `${way}, ${borderText(border, along, along === "travel" ? travel : 0, format)}`).join("; ")}.`;
}
