import { useCallback, useEffect } from "react";
import { isWithin, type KeyPath } from "../../setup/types/keyPath.ts";
import { type Doubt, ofTheTruck, type UnusualDoubt } from "../../studies/doubts/doubt.ts";
import { exampleDoubts } from "../../studies/wording/answerWords.ts";
import { standingDoubts } from "../../studies/wording/standingDoubts.ts";
import { unusualDoubts } from "../../studies/wording/unusualReport.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { shownOf } from "./madeOf.ts";
import { memoLast } from "./memoLast.ts";
import { lengthFormat } from "./selectors.ts";
import type { Truck } from "./truck.ts";
import { useWaitingFor } from "./useWaitingFor.ts";
import { useFormat, useWorkbench } from "./useWorkbench.ts";
import type { WorkbenchState } from "./workbenchState.ts";

/** What is in doubt of any truck, in the units shown. */
export function useDoubts(): (truck: Truck) => readonly Doubt[] {
  const format = useFormat();
  return useCallback((truck) => doubtsOf(truck, format), [format]);
}

/**
 * Marks the page's root with `data-doubted` while something of the truck shown is in doubt: nothing is then drawn green; and with
 * `data-waiting` while too little is read for a verdict: no gap is then drawn as a fact.
 */
export function useDoubtedRoot(truck: Truck | null): void {
  const doubtsOf = useDoubts();
  const isWaiting = useWaitingFor() !== null;
  // The page may show one a step behind, curves the one on the board: nothing of either is green while one is in doubt.
  const board = useWorkbench((s) => s.truck);
  const isDoubted = [truck, board].some((one) => one !== null && doubtsOf(one).length > 0);
  useEffect(() => {
    document.documentElement.toggleAttribute("data-doubted", isDoubted);
    document.documentElement.toggleAttribute("data-waiting", isWaiting);
  }, [isDoubted, isWaiting]);
}

const NONE: readonly UnusualDoubt[] = [];
const doubts = new WeakMap<Truck, (format: LengthFormat) => readonly Doubt[]>();
const told = new WeakMap<Truck, (format: LengthFormat) => readonly UnusualDoubt[]>();

/** What is unusual of a truck as it was measured; the same list until it or the format changes. */
function unusualOf(truck: Truck, format: LengthFormat): readonly UnusualDoubt[] {
  const tell = told.get(truck) ?? memoLast((as: LengthFormat) => unusualDoubts(truck.bolted, as));
  told.set(truck, tell);
  return tell(format);
}

/** The same of the truck with its knuckles as built: what is unusual of the readings off the jig too. */
export function useDoubtsAsBuilt(): (truck: Truck) => readonly Doubt[] {
  const format = useFormat();
  return useCallback((truck) => allOf(truck, unusualOf(truck, format), format), [format]);
}

/** What is in doubt of a truck, of every kind: the one place that says so, for every screen. */
export function doubtsOf(truck: Truck, format: LengthFormat): readonly Doubt[] {
  const tell =
    doubts.get(truck) ?? memoLast((as: LengthFormat) => allOf(truck, ofTheTruck(unusualOf(truck, as)), as));
  doubts.set(truck, tell);
  return tell(format);
}

function allOf(truck: Truck, unusual: readonly UnusualDoubt[], format: LengthFormat): readonly Doubt[] {
  // As it was measured: what aligns it moves what stood there.
  const standing = standingDoubts(truck.bolted, shownOf(truck), format);
  return [...unusual, ...standing, ...exampleDoubts(truck.setup)];
}

/** What is unusual of the truck shown at a field, inside it, or with it having part in it. A new list each time. */
export function unusualAt(
  state: Pick<WorkbenchState, "truck" | "document" | "preferences">,
  path: KeyPath,
): readonly UnusualDoubt[] {
  const all = state.truck ? unusualOf(state.truck, lengthFormat(state)) : NONE;
  if (all.length === 0) return NONE;
  // A number that nobody typed is told where its first reading is, to which the doubt leads.
  return all.filter(({ path: at, also, readings }) =>
    [at, ...also, ...readings.slice(0, 1)].some((one) => isWithin(one, path)),
  );
}
