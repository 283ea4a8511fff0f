import { type ComponentType, lazy, Suspense } from "react";
import { Fold } from "../parts/Fold.tsx";
import type { Truck } from "../state/truck.ts";

type Body = ComponentType<{ truck: Truck }>;

/** What takes long to find, in the order of the page. The bodies are loaded where somebody opens one. */
const FOLDS: readonly { id: string; title: string; note: string; Body: Body }[] = [
  {
    id: "solve",
    title: "Solve for",
    note: "the value of a field that gives a wanted camber, scrub radius, gap …",
    Body: lazy(async () => ({ default: (await import("./compare/SolveBody.tsx")).SolveBody })),
  },
  {
    id: "chart",
    title: "Fit chart",
    note: "two fields, or tires and wheels, against each other",
    Body: lazy(async () => ({ default: (await import("./chart/ChartBody.tsx")).ChartBody })),
  },
  {
    id: "change",
    title: "What to change",
    note: "the smallest change of each field that makes it clear",
    Body: lazy(async () => ({ default: (await import("./change/ChangeBody.tsx")).ChangeBody })),
  },
  {
    id: "odds",
    title: "Odds",
    note: "how likely it clears, measured like this",
    Body: lazy(async () => ({ default: (await import("./odds/OddsBody.tsx")).OddsBody })),
  },
];

/** Solving for a value, the fit chart, what to change and the odds; each worked out while it is open. */
export function SearchFolds({ truck }: { truck: Truck }) {
  return (
    <div className="folds">
      {FOLDS.map(({ id, title, note, Body }) => (
        <Fold key={id} id={id} title={title} note={note}>
          <Suspense fallback={<p>Setting it up…</p>}>
            <Body truck={truck} />
          </Suspense>
        </Fold>
      ))}
    </div>
  );
}
