import { standingWords } from "../../studies/wording/standingWords.ts";
import type { Truck } from "../state/truck.ts";

/**
 * As what a truck is shown, in words: aligned or as bolted on; null = it has no targets and none were asked for, so there is
 * but one way it can stand. @param isAligned what was asked for
 */
export function standingText({ setup }: Truck, isAligned: boolean): string | null {
  const words = standingWords(setup);
  if (!isAligned || setup.alignment.standing !== undefined) return words;
  return words === null ? "as bolted on: no targets" : `${words}: cannot stand at its targets’ stance`;
}
