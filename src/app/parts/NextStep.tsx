import { jumpTo } from "./JumpBar.tsx";

/** The way from an order to a knuckle that is built and checked: what each step's fold is called. */
const STEPS = { drawings: "Drawings", jig: "Jig sheet", asBuilt: "As built" } as const;

const WHY: Readonly<Record<keyof typeof STEPS, string>> = {
  drawings: "what the shop cuts and welds by",
  jig: "what the tape must read off the finished knuckle",
  asBuilt: "type what it does read, and see whether it still clears",
};

export type NextStepProps = {
  to: keyof typeof STEPS;
  /** Without the words beside the button. Default false. */
  isBare?: boolean;
};

/** At the foot of a step, the way to the one after it. */
export function NextStep({ to, isBare = false }: NextStepProps) {
  const button = (
    <button type="button" className="button" onClick={() => jumpTo("build", `[data-fold='${to}'] > summary`)}>
      Next: {STEPS[to]} <span aria-hidden="true">›</span>
    </button>
  );
  return isBare ? (
    button
  ) : (
    <p className="next-step">
      {button} {WHY[to]}
    </p>
  );
}
