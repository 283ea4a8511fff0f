import { useEffect } from "react";
import { Fold } from "../parts/Fold.tsx";
import { Late, LateBody } from "../parts/late.tsx";
import type { Truck } from "../state/truck.ts";

/** ms after they are there: what else came with them is fetched first. */
const AHEAD = 300;

/** What takes long to find, in the order of the page. */
const FOLDS: readonly { id: string; title: string; note: string; body: LateBody<{ truck: Truck }> }[] = [
  {
    id: "solve",
    title: "Solve for",
    note: "the value of a field that gives a wanted camber, scrub radius, gap …",
    body: new LateBody(async () => (await import("./compare/SolveBody.tsx")).SolveBody),
  },
  {
    id: "chart",
    title: "Fit chart",
    note: "two fields, or tires and wheels, against each other",
    body: new LateBody(async () => (await import("./chart/ChartBody.tsx")).ChartBody),
  },
  {
    id: "change",
    title: "What to change",
    note: "the smallest change of each field that makes it clear",
    body: new LateBody(async () => (await import("./change/ChangeBody.tsx")).ChangeBody),
  },
  {
    id: "odds",
    title: "Odds",
    note: "how likely it clears, measured like this",
    body: new LateBody(async () => (await import("./odds/OddsBody.tsx")).OddsBody),
  },
];

/** Solving for a value, the fit chart, what to change and the odds; each worked out while it is open. */
export function SearchFolds({ truck }: { truck: Truck }) {
  // Who comes here opens one before long.
  useEffect(() => {
    const timer = setTimeout(() => {
      for (const { body } of FOLDS) body.fetch().catch(() => {});
    }, AHEAD);
    return () => clearTimeout(timer);
  }, []);
  return (
    <div className="folds">
      {FOLDS.map(({ id, title, note, body }) => (
        <Fold key={id} id={id} title={title} note={note}>
          <Late of={body} props={{ truck }} words="Setting it up…" />
        </Fold>
      ))}
    </div>
  );
}
