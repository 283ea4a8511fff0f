import type { Setup } from "../../setup/types/types.ts";
import { travelText } from "../../studies/wording/poseWords.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import type { ReadValue } from "../parts/ScaleReadout.tsx";

/** A text without a word at its end that tells which way, and what that way is: 1 or −1; 0 = none is told. */
function wayOf(text: string, ways: Readonly<Record<string, 1 | -1>>): readonly [amount: string, way: number] {
  const [, amount = text, word = ""] = /^(.*?)([a-z]+)\s*$/i.exec(text.trim()) ?? [];
  const way = ways[word.toLowerCase()] ?? 0;
  return way === 0 ? [text, 0] : [amount, way];
}

const UP_OR_DOWN = { bump: 1, up: 1, droop: -1, down: -1 } as const;

/**
 * A travel as it is typed beside its slide: `2`, `-1 1/2 in`, `1 1/2 droop`, `50 mm`. Without a word or a sign it is bump.
 * @param units of a bare number
 * @returns mm, + bump, within the setup's travel
 */
export function readTravel(
  text: string,
  { droop, bump }: Setup["travel"],
  units: FileUnits,
  format: LengthFormat,
): ReadValue {
  const [amount, way] = wayOf(text, UP_OR_DOWN);
  const read = parseLength(amount, units);
  if (!read.ok) return read;
  if (way !== 0 && read.mm < 0) return { ok: false, mend: "write either a minus or droop, not both" };
  const value = (way < 0 ? -read.mm : read.mm) + 0;
  // As much as a readout rounds: what it shows can be typed.
  const within = Math.min(bump, Math.max(droop, value));
  if (Math.abs(within - value) > 1)
    return {
      ok: false,
      mend: `the setup’s travel is from ${travelText(droop, format)} to ${travelText(bump, format)}`,
    };
  return { ok: true, value: within };
}

const LEFT_OR_RIGHT = { left: 1, right: -1, l: 1, r: -1 } as const;

/**
 * A steering input as it is typed beside its slide: `50 left`, `-30%`, `0`. Without a word or a sign it is to the left.
 * @returns share of full lock, + left
 */
export function readSteer(text: string): ReadValue {
  const [amount, way] = wayOf(text.replace(/\block\s*$/i, ""), LEFT_OR_RIGHT);
  const read = parseNumber(amount.replace(/%\s*$/, ""));
  if (!read.ok) return { ok: false, mend: "write percent of lock and which way, such as 50 left" };
  if (Math.abs(read.value) > 100 || (way !== 0 && read.value < 0))
    return { ok: false, mend: "write 0 to 100, and left or right" };
  return { ok: true, value: ((way < 0 ? -1 : 1) * read.value) / 100 + 0 };
}
