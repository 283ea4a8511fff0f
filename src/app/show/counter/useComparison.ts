import { useMemo } from "react";
import { useStore } from "zustand";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { formatIssue } from "../../../setup/reading/issueList.ts";
import type { Result } from "../../../setup/types/types.ts";
import type { Doubt } from "../../../studies/doubts/doubt.ts";
import type { TruckAnswer } from "../../../studies/wording/counterFacts.ts";
import { lengthText } from "../../../studies/wording/lengths.ts";
import { truckName } from "../../../studies/wording/truckName.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { TAPE_MARK } from "../../../units/lengthUnits.ts";
import { standingText } from "../../parts/standing.tsx";
import { chosenPair, counter } from "../../state/counterStore.ts";
import { memoLast } from "../../state/memoLast.ts";
import { isSameTruck } from "../../state/sameTruck.ts";
import { type Truck, trucks } from "../../state/truck.ts";
import { useDoubts } from "../../state/useDoubts.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import type { Answered } from "../../work/answerCache.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { type HubFaceRange, hubFaceRange, truckAnswer, withHubFace } from "./whatIf.ts";

/** One of the two trucks compared. */
export interface Contender {
  readonly letter: "A" | "B";
  /** What it is called in a sentence. */
  readonly name: string;
  readonly truck: Truck;
  readonly answer: TruckAnswer;
  /** The two that `answer` is put together from. */
  readonly check: Answered<"check">;
  readonly heights: Answered<"heights">;
  /** What keeps its answer from being told as clear; empty = nothing. */
  readonly doubts: readonly Doubt[];
}

/** A height that can be asked for. */
export interface NamedTravel {
  readonly name: string;
  readonly travel: number;
}

export interface Comparison {
  readonly setupName: string;
  /** As what the trucks are shown, aligned or as bolted on, in words; null = there is no difference. */
  readonly standing: string | null;
  readonly names: readonly string[];
  readonly chosen: readonly [string | null, string | null];
  readonly stances: readonly NamedTravel[];
  readonly travel: number;
  readonly format: LengthFormat;
  /** null where it cannot be put together; then `trouble` says why. */
  readonly first: Contender | null;
  /** With the slider's hub face where that was moved. */
  readonly second: Contender | null;
  /** The second as its variant has it. */
  readonly secondOwn: Truck | null;
  readonly isWhatIf: boolean;
  /** Both letters stand for one truck, whatever they are called. */
  readonly isSame: boolean;
  readonly slider: HubFaceRange | null;
  readonly trouble: readonly string[];
}

const whatIf = memoLast(withHubFace);

/** What the counter and the customer's sheet compare, with all that is known of both so far; null without a truck. */
export function useComparison(): Comparison | null {
  const good = useWorkbench((s) => s.good);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const format = useFormat();
  const doubtsOf = useDoubts();
  const choice = useStore(counter);
  const names = useMemo(() => variantNames(good?.document), [good]);
  const chosen = chosenPair(choice, names, good?.variant ?? null);
  const made = chosen.map((variant) => good && trucks.make(good.document, file, variant, meshes, isAligned));
  const first = truckOf(made[0]);
  const secondOwn = truckOf(made[1]);
  const changed = secondOwn && choice.hubFace !== null ? whatIf(secondOwn, choice.hubFace) : null;
  const second = changed ? truckOf(changed) : secondOwn;
  const setup = (first ?? second)?.setup;
  const stances = useMemo(
    () => (setup && setup.stances.length > 0 ? setup.stances : [{ name: "as measured", travel: 0 }]),
    [setup],
  );
  const travels = useMemo(() => stances.map(({ travel }) => travel), [stances]);
  const asked = { question: { travels } };
  // In this order: what is asked for first is answered first.
  const heights = [useAnswer("heights", first, asked), useAnswer("heights", second, asked)] as const;
  const checks = [useAnswer("check", first), useAnswer("check", second)] as const;
  if (!good || !setup) return null;

  const step = TAPE_MARK[format.units];
  // A variant tried with another hub face keeps its name: its other changes are still on the truck.
  const hubFaceName = choice.hubFace === null ? "" : `hub face ${lengthText(choice.hubFace, format)}`;
  const whatIfName = [chosen[1], hubFaceName].filter(Boolean).join(", ");
  return {
    setupName: setup.name,
    standing: standingOfBoth([first, second], isAligned),
    names,
    chosen,
    stances,
    format,
    secondOwn,
    travel: travels.find((travel) => travel === choice.travel) ?? travels[0]!,
    first: first && {
      letter: "A",
      name: truckName(chosen[0]),
      truck: first,
      ...answersOf(checks[0]!, heights[0]!),
      doubts: doubtsOf(first),
    },
    second: second && {
      letter: "B",
      truck: second,
      ...answersOf(checks[1]!, heights[1]!),
      doubts: doubtsOf(second),
      name: changed ? whatIfName : truckName(chosen[1]),
    },
    isWhatIf: changed !== null,
    isSame: first !== null && second !== null && isSameTruck(first, second),
    slider:
      first && secondOwn
        ? hubFaceRange(first.setup.knuckle.hubFace, secondOwn.setup.knuckle.hubFace, step)
        : null,
    trouble: [...made, changed].flatMap((result) =>
      result && !result.ok ? result.issues.map(formatIssue) : [],
    ),
  };
}

function answersOf(check: Answered<"check">, heights: Answered<"heights">) {
  return { check, heights, answer: truckAnswer(check, heights) };
}

function truckOf(result: Result<Truck> | null | undefined): Truck | null {
  return result?.ok ? result.value : null;
}

function standingOfBoth(trucks: readonly (Truck | null)[], isAligned: boolean): string | null {
  const [a, b] = trucks.flatMap((truck) => (truck ? [standingText(truck, isAligned)] : []));
  if (b === undefined || a === b) return a ?? null;
  return `A ${a ?? "as bolted on"}, B ${b ?? "as bolted on"}`;
}

/** The setup compared, and as what its trucks are shown: `Shop truck, aligned`. */
export function nameWords({ setupName, standing }: Pick<Comparison, "setupName" | "standing">): string {
  return standing === null ? setupName : `${setupName}, ${standing}`;
}
