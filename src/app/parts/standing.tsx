import "./standing.css";
import { useId } from "react";
import { standingWords } from "../../studies/wording/answerWords.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";

/**
 * As what a truck is shown, in words: aligned or as bolted on; null = it has no targets and none were asked for, so there is
 * but one way it can stand. @param isAligned what was asked for
 */
export function standingText({ setup }: Truck, isAligned: boolean): string | null {
  const words = standingWords(setup);
  if (!isAligned || setup.alignment.standing !== undefined) return words;
  return words === null ? "as bolted on: no targets" : `${words}: cannot stand at its targets’ stance`;
}

/** Shows the truck as bolted on, or aligned to its targets first; without targets it says why there is no choice. */
export function StandingSwitch() {
  const isAligned = useWorkbench((s) => s.isAligned);
  const setAligned = useWorkbench((s) => s.setAligned);
  return <StandingChoice name="Truck shown" isAligned={isAligned} onChoose={setAligned} />;
}

export type StandingChoiceProps = {
  /** What is chosen for, for who does not see it. */
  name: string;
  isAligned: boolean;
  onChoose: (isAligned: boolean) => void;
};

/** As bolted on or aligned; without targets it says why there is no choice. */
export function StandingChoice({ name, isAligned, onChoose }: StandingChoiceProps) {
  const id = useId();
  const hasTargets = useWorkbench((s) => !!s.truck?.bolted.setup.alignment.targets);
  const isShown = hasTargets && isAligned;
  return (
    <fieldset className="standing-switch" aria-describedby={hasTargets ? undefined : id}>
      <legend className="sr-only">{name}</legend>
      <button type="button" aria-pressed={!isShown} onClick={() => onChoose(false)}>
        as bolted on
      </button>
      <button
        type="button"
        aria-pressed={isShown}
        disabled={!hasTargets}
        title={hasTargets ? undefined : "the setup has no alignment targets"}
        onClick={() => onChoose(true)}
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

/** As what the truck is shown, aligned or as bolted on; nothing where there is no difference. */
export function StandingTag() {
  const text = useWorkbench((s) => s.truck && standingText(s.truck, s.isAligned));
  if (text === null) return null;
  const isPlain = text === "aligned" || text === "as bolted on";
  return (
    <p className="standing-tag" data-plain={isPlain}>
      {text}
    </p>
  );
}
