import type { TruckAlignment } from "../../../studies/alignment/alignSide.ts";
import type { Truck } from "../../state/truck.ts";
import { workbench } from "../../state/workbench.ts";
import { startShims, startTargets } from "./startTargets.ts";

export type StartAligningProps = {
  truck: Truck;
  /** null where the truck does not even stand as measured. */
  alignment: TruckAlignment | null;
};

/** What a setup needs to be aligned, and buttons that add it; nothing where it is all there. */
export function StartAligning({ truck, alignment }: StartAligningProps) {
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
          ? "Say what the wheels are to be aligned to, and this card tells the shims and tie rods that do it."
          : "Nothing but the tie rods can be set: say what camber and caster are set with."}{" "}
        {needsTargets && "The targets start at what the truck reads as bolted on."}{" "}
        {needsAdjusters && "The stacks start as a guess: put in those the truck was measured with."}
      </p>
      <button type="button" className="button" onClick={add}>
        Add {what}
      </button>
    </div>
  );
}
