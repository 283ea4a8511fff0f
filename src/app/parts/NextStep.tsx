import { jumpTo } from "./JumpBar.tsx";

/** The way from an order to a knuckle that is built and checked: what each step's fold is called. */
const STEPS = { drawings: "Drawings", jig: "Jig sheet", asBuilt: "As built" } as const;

const WHY: Readonly<Record<keyof typeof STEPS, string>> = {
  drawings: "what the shop cuts and welds by",
  jig: "what the tape must read off the finished knuckle",
  asBuilt: "type what it does read, and see whether it still clears",
};

/** At the foot of a step, the way to the one after it. */
export function NextStep({ to }: { to: keyof typeof STEPS }) {
  return (
    <p className="next-step">
      <button
        type="button"
        className="button"
        onClick={() => jumpTo("build", `[data-fold='${to}'] > summary`)}
      >
        Next: {STEPS[to]} <span aria-hidden="true">›</span>
      </button>{" "}
      {WHY[to]}
    </p>
  );
}
