import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Confirmation } from "../plausibility/unusual.ts";
import type { CheckReport, Verdict } from "../reports/check.ts";

/**
 * What can be doubted of an input: it is plausibly a slip; nobody has measured it on this truck, so that it is an example's
 * or of the assumed layout.
 */
export type DoubtKind = "unusual" | "fromExample" | "assumed";

interface AnyDoubt {
  /** The field of the setup it is about. */
  readonly path: KeyPath;
  /** What is to be looked at again, in a sentence or two. */
  readonly text: string;
}

/** A value that is plausibly a slip. */
export interface UnusualDoubt extends AnyDoubt {
  readonly kind: "unusual";
  /** Other fields that have part in it. */
  readonly also: readonly KeyPath[];
  /** Where the readings stand that the value is worked out of; none = it was typed. */
  readonly readings: readonly KeyPath[];
  /** What the setup says in `confirmed` once somebody said that it is so. */
  readonly confirm: Confirmation;
}

/** A value that nobody has measured on this truck. */
export interface ExampleDoubt extends AnyDoubt {
  readonly kind: "fromExample" | "assumed";
}

/** A reason not to draw an answer green: an input that may not be this truck's. */
export type Doubt = UnusualDoubt | ExampleDoubt;

/** Those that bear on a truck as it stands in the file: a reading off the jig is of its knuckles as built, and of nothing else. */
export function ofTheTruck<D extends Pick<Doubt, "path">>(doubts: readonly D[]): readonly D[] {
  return doubts.filter(({ path }) => path[0] !== "asBuilt");
}

/** What a check is told as: its verdict; `unfinished` = it ended before it was through and found nothing that rubs. */
export type ToldVerdict = Verdict | "unfinished";

/** What an answer is shown as: the verdict, or what keeps it from being shown as clear. */
export type AnswerState = ToldVerdict | DoubtKind;

/** A rub that was found is there, however much was not looked at; all else of a check that was cut short is open. */
export function toldVerdict({ verdict, cutShort }: Pick<CheckReport, "verdict" | "cutShort">): ToldVerdict {
  return cutShort && verdict !== "rubs" ? "unfinished" : verdict;
}

/**
 * What a verdict is shown as while some inputs are in doubt: "clear" gives way, first to what is unusual. What rubs or is
 * close is told as it is: a doubt takes nothing off a warning.
 */
export function answerState(
  report: Pick<CheckReport, "verdict" | "cutShort">,
  doubts: readonly Pick<Doubt, "kind">[],
): AnswerState {
  const verdict = toldVerdict(report);
  if (verdict !== "clear" || doubts.length === 0) return verdict;
  return (
    (["unusual", "fromExample"] as const).find((one) => doubts.some(({ kind }) => kind === one)) ?? "assumed"
  );
}
