import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import { comparedText, differs, NUMBERS } from "./comparedNumbers.ts";
import { listWords } from "./nameWords.ts";

/** How a variant hangs on what it was made from. */
export const VARIANT_FOLLOWS =
  "A variant holds a value of its own for each number it sets: that value stays when the current truck’s changes, whatever the variant is called. All else you change on the current truck goes for the variant too.";

/** The numbers of `NUMBERS` that a variant sets by themselves, and where. */
const SET: Readonly<Record<string, KeyPath>> = {
  "Hub-face distance": ["knuckle", "hubFace"],
  "Pin height": ["knuckle", "pinHeight"],
  "Pin angle": ["knuckle", "pinAngle"],
  "Pin lead": ["knuckle", "pinLead"],
  "Ball joint span": ["knuckle", "span"],
  "Rim width": ["wheel", "rimWidth"],
};

/**
 * What a variant sets and what that comes to beside the truck as it is now: `“one inch more drop” sets pin height 6 3/8 in, now 2 in
 * less than the current truck’s.` "" = it sets none of the numbers compared. @param patch what it changes, as typed
 */
export function variantSetsSentence(
  { name, patch }: { readonly name: string; readonly patch: unknown },
  variant: Model,
  current: Model,
  format: LengthFormat,
): string {
  const told = NUMBERS.flatMap((number) => {
    const path = SET[number.name];
    if (path === undefined || valueAt(patch, path) === undefined) return [];
    const [is, was] = [number.read(variant), number.read(current)];
    if (is === null || was === null) return [];
    const sets = `${number.name.toLowerCase()} ${comparedText(is, number, format)}`;
    if (!differs([is, was])) return [`${sets}, now as the current truck’s`];
    const amount = comparedText(Math.abs(is - was), number, format);
    return [`${sets}, now ${amount} ${is > was ? "more" : "less"} than the current truck’s`];
  });
  return told.length === 0 ? "" : `“${name}” sets ${listWords(told)}.`;
}
