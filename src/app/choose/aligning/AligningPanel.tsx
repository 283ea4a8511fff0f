import "./aligning.css";
import { useDeferredValue } from "react";
import type { LengthUnit, Setup } from "../../../setup/types/types.ts";
import type { TruckAlignment } from "../../../studies/alignment/alignSide.ts";
import { lengthText } from "../../../studies/wording/lengths.ts";
import { degFromRad } from "../../../units/angle.ts";
import { printAlone } from "../../parts/printAlone.ts";
import { reportFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import { StandingSwitch } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { ReadingTable } from "./ReadingTable.tsx";
import { SensitivityTable } from "./SensitivityTable.tsx";
import { SettingFigures } from "./SettingFigures.tsx";
import { settingFormat } from "./settingFormat.ts";
import { isAlike, truckAlignment } from "./truckAlignment.ts";

export type AligningPanelProps = {
  truck: Truck;
};

const SET = { shims: "shim", eccentric: "of the eccentric", adjustableUpperArm: "of leg" } as const;

/** The alignment card: what is wanted, what is read, what is set so, and what a little more of it does. */
export function AligningPanel({ truck }: AligningPanelProps) {
  // A drag makes a truck an event; the card follows when there is time.
  const of = useDeferredValue(truck);
  const format = settingFormat(useFormat());
  const { setup } = of.bolted;
  const result = truckAlignment(of);
  const alignment = result.ok ? result.alignment : null;
  const asked = setup.alignment.targets !== null;
  const stance = setup.alignment.targets?.stance ?? "as measured";
  return (
    <section className="aligning" aria-labelledby="aligning-title">
      <header className="aligning-head">
        <h2 id="aligning-title" className="label">
          Alignment card{asked && `: ${stance}`}
        </h2>
        {asked && alignment && <PrintCard />}
        {asked && alignment && (
          <SaveMenu of="the alignment" files={[reportFile(of, { of: "align" }, "The alignment")]} />
        )}
      </header>
      <p className="aligning-of">
        {setup.name}
        {setup.variant !== null && `, variant ${setup.variant}`}
      </p>
      <StandingSwitch />
      {!result.ok && (
        <p>
          The front end cannot stand at travel {lengthText(result.travel, format)} with the wheels straight
          ahead and that toe: choose a stance it reaches, or less toe.
        </p>
      )}
      {asked && alignment && (
        <>
          <Outcome alignment={alignment} setup={setup} />
          {(isAlike(alignment) ? [alignment.left] : [alignment.left, alignment.right]).map((side) => (
            <ReadingTable
              key={side.side}
              side={side}
              caption={
                isAlike(alignment) ? "Either wheel" : `${side.side === "left" ? "Left" : "Right"} wheel`
              }
              shown={of.ask.isAligned ? "aligned" : "bolted"}
            />
          ))}
          <p className="aligning-note">
            Wanted is the true caster of the steering axis; a sweep reads a little high, and more so with much
            kingpin inclination.
          </p>
          <SettingFigures alignment={alignment} setup={setup} format={format} />
          {setup.adjusters && (
            <SensitivityTable
              sensitivities={alignment.left.sensitivities}
              what={SET[setup.adjusters.kind]}
              format={format}
            />
          )}
          <p className="aligning-note">
            Set by this, then read on the truck with gauges: links here are rigid, bushings are not. Every nut
            keeps full thread, every lock nut is tight.
          </p>
        </>
      )}
      <StartAligning truck={of} alignment={alignment} />
    </section>
  );
}

/** Whether the targets are met, in one sentence. */
function Outcome({
  alignment: { reached, left, right },
  setup,
}: {
  alignment: TruckAlignment;
  setup: Setup;
}) {
  const who = left.reached ? "the right wheel" : right.reached ? "the left wheel" : "neither wheel";
  const means = setup.adjusters === null ? "with the tie rods alone" : "within the adjusters’ range";
  return (
    <p className="aligning-outcome" data-reached={reached}>
      <StateMark word={reached ? "clear" : "rubs"} />{" "}
      {reached
        ? "In range: both wheels meet their targets, to the nearest whole shim or step."
        : `Out of range: ${who} ${who === "neither wheel" ? "meets its" : "does not meet its"} targets ${means}. This is the nearest there is.`}
    </p>
  );
}

/** Prints the alignment card alone, for the wall beside the rack. */
function PrintCard() {
  return (
    <button type="button" className="button" onClick={() => printAlone("aligning")}>
      Print
    </button>
  );
}

type StartAligningProps = {
  truck: Truck;
  /** null where the truck does not even stand as measured. */
  alignment: TruckAlignment | null;
};

/** What a setup needs to be aligned, and buttons that add it; nothing where it is all there. */
function StartAligning({ truck, alignment }: StartAligningProps) {
  const { setup } = truck.bolted;
  const needsTargets = setup.alignment.targets === null;
  const needsAdjusters = setup.adjusters === null;
  if ((!needsTargets && !needsAdjusters) || alignment === null) return null;
  const add = () => {
    const { applySuggestion, beginGesture, endGesture } = workbench.getState();
    beginGesture();
    if (needsAdjusters)
      applySuggestion({ path: ["adjusters"], value: startShims(setup.units), kind: "nearest" });
    if (needsTargets) {
      const value = startTargets(alignment, setup);
      applySuggestion({ path: ["alignment", "targets"], value, kind: "nearest" });
    }
    endGesture();
  };
  const what = [needsTargets && "targets", needsAdjusters && "shim stacks"].filter(Boolean).join(" and ");
  return (
    <div className="aligning-start">
      <p>
        {needsTargets
          ? "Enter the angles wanted, and this card gives the shims and tie rods that set them."
          : "Only the tie rods can be set so far: add what sets camber and caster."}{" "}
        {needsTargets && "The targets start at what the truck reads as bolted on."}{" "}
        {needsAdjusters && "The stacks start as a guess: put in those the truck was measured with."}
      </p>
      <button type="button" className="button" onClick={add}>
        Add {what}
      </button>
    </div>
  );
}

/** Targets to start from, as the file holds them: what it reads as bolted on, to the nearest quarter of a degree. */
export function startTargets({ left }: TruckAlignment, { stances }: Setup): object {
  const quarter = (rad: number) => Math.round(degFromRad(rad) * 4) / 4 + 0;
  const standing = stances.find(({ travel }) => travel === 0);
  return {
    ...(standing && { stance: standing.name }),
    camber: quarter(left.asBolted.camber),
    caster: quarter(left.asBolted.caster),
  };
}

/** Shim stacks to start from, as the file holds them: about what many trucks have (common practice, no source). */
export function startShims(units: LengthUnit): object {
  const stack = units === "in" ? "1/4" : 6;
  return { kind: "shims", front: stack, rear: stack, most: units === "in" ? "3/4" : 20 };
}
