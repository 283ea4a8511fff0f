import { length, sub } from "../../../geometry/vec.ts";
import type { Setup } from "../../../setup/types/types.ts";
import type { SideAlignment, TruckAlignment } from "../../../studies/alignment/alignSide.ts";
import { sleeveWords } from "../../../studies/wording/alignSentence.ts";
import { lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { changeWords, SettingFigure } from "./SettingFigure.tsx";

export type SettingFiguresProps = {
  alignment: TruckAlignment;
  /** As bolted on. */
  setup: Setup;
  format: LengthFormat;
};

const NOTES = {
  shims:
    "From above, to one scale: frame, shims on their bolt, arm shaft. Dashed: the stack as bolted on. Thin line: the thickest stack. Any shims of that thickness do.",
  eccentric:
    "Dials: the eccentric's mark, straight up in its middle, + to the right; dashed as bolted on. + moves the pivot along the setup's direction.",
  adjustableUpperArm:
    "Leg from the middle of its pivot to the ball joint. Line: from the shortest it can be set to the longest; dashed: as measured.",
} as const;

/** What is set on both wheels: a drawing each, then the tie rods. */
export function SettingFigures({ alignment, setup, format }: SettingFiguresProps) {
  const { adjusters } = setup;
  const { left, right } = alignment;
  // Less than the finest fraction is still turns of a sleeve.
  const rodFormat: LengthFormat =
    format.units === "in" ? { units: "in", fraction: "decimal", decimals: 3 } : format;
  return (
    <>
      {adjusters && (
        <>
          <div className="settings">
            {left.settings.flatMap((adjuster, i) =>
              ([left, right] as const).map((side) => (
                <SettingFigure
                  key={`${side.side} ${adjuster.name}`}
                  adjusters={adjusters}
                  adjuster={side.settings[i]!}
                  side={side.side === "left" ? "left" : "right"}
                  legLength={adjusters.kind === "adjustableUpperArm" ? legLength(side, adjuster.name) : null}
                  format={format}
                />
              )),
            )}
          </div>
          <p className="aligning-note">{NOTES[adjusters.kind]}</p>
        </>
      )}
      <dl className="tie-rods">
        {[left, right].map(({ side, tieRod }) => (
          <div key={side}>
            <dt>{side} tie rod</dt>
            <dd>
              {keepTogether(
                changeWords(tieRod.aligned - tieRod.asBolted, ["longer by", "shorter by"], rodFormat),
              )}
              <small className="tie-rod-length">
                {sleeveWords(tieRod.aligned - tieRod.asBolted, setup) && (
                  <>{keepTogether(sleeveWords(tieRod.aligned - tieRod.asBolted, setup))}; </>
                )}
                {keepTogether(lengthText(tieRod.aligned, format))} between its ends’ centers
              </small>
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}

function legLength({ input }: SideAlignment, name: string): number | null {
  const { frontPivot, rearPivot, ballJoint } = input.upperArm;
  if (name === "both legs") return null;
  return length(sub(name === "front" ? frontPivot : rearPivot, ballJoint));
}
