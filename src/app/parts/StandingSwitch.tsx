import "./standing.css";
import { useId } from "react";
import { useWorkbench } from "../state/useWorkbench.ts";

/** Shows the truck as bolted on, or aligned to its targets first; without targets it says why there is no choice. */
export function StandingSwitch() {
  const id = useId();
  const isAligned = useWorkbench((s) => s.isAligned);
  const setAligned = useWorkbench((s) => s.setAligned);
  const hasTargets = useWorkbench((s) => !!s.truck?.bolted.setup.alignment.targets);
  const isShown = hasTargets && isAligned;
  return (
    <fieldset className="standing-switch" aria-describedby={hasTargets ? undefined : id}>
      <legend className="sr-only">Truck shown</legend>
      <button type="button" aria-pressed={!isShown} onClick={() => setAligned(false)}>
        as bolted on
      </button>
      <button
        type="button"
        aria-pressed={isShown}
        disabled={!hasTargets}
        title={hasTargets ? undefined : "the setup has no alignment targets"}
        onClick={() => setAligned(true)}
      >
        aligned
      </button>
      {!hasTargets && (
        <span id={id} className="standing-why">
          no targets in this setup
        </span>
      )}
    </fieldset>
  );
}
