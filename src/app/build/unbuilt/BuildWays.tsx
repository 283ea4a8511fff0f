import { UNBUILT_WAYS, usualBuildSentence } from "../../../studies/wording/drawingWords.ts";
import { goToField } from "../../measure/fields/fieldAsked.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { fetchAndStart } from "./fetchAndStart.ts";

/** The two ways to say what a knuckle is made of: a usual one at once, or field by field. */
export function BuildWays() {
  const isBlocked = useWorkbench((s) => s.issues.length > 0);
  return (
    <>
      <div className="row-tools">
        <button type="button" className="button" disabled={isBlocked} onClick={() => void fetchAndStart()}>
          {UNBUILT_WAYS.usual}
        </button>
        <button type="button" className="button" onClick={() => goToField(["build"])}>
          {UNBUILT_WAYS.fields}
        </button>
      </div>
      <p className="fold-fine">{UNBUILT_WAYS.note}</p>
    </>
  );
}

/** How much of what the truck's knuckle is made of is an example's. */
export function UsualBuildNote({ truck }: { truck: Truck }) {
  const text = usualBuildSentence(truck.setup);
  return text === null ? null : <p role="status">{text}</p>;
}
