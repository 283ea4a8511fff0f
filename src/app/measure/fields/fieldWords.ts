import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { numberNature } from "../../../setup/fields/fieldKinds.ts";
import type { SetupField } from "../../../setup/fields/setupField.ts";
import { MAX_LENGTH } from "../../../setup/reading/limits.ts";
import { typedPair } from "../../../setup/reading/typedPair.ts";
import { isWithin, type KeyPath } from "../../../setup/types/keyPath.ts";
import { withMinus } from "../../../studies/wording/lengths.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { bareUnit } from "../../../units/quantity.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import type { Suggestion } from "../../state/suggestion.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";
import { heldValue } from "./stepBy.ts";

const WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  units: { in: "inches", mm: "millimeters" },
  unit: { in: "inches", mm: "millimeters", cm: "centimeters", m: "meters" },
  side: { both: "both sides", left: "left side", right: "right side" },
  type: { rack: "rack", pitman: "pitman arm and idler" },
  frame: { knuckle: "knuckle's own axes", hub: "from the hub face" },
  rear: { follows: "follows the front", stays: "stays as measured" },
};

/** A word of the file as a form says it; one that is not here is taken apart: `lowerArm` → `lower arm`. */
export function choiceWords(path: KeyPath, word: string): string {
  if (word === "tieRodOuter") return "outer tie rod end";
  const plain = word.replace(
    /([a-z])([A-Z])/g,
    (_, end: string, start: string) => `${end} ${start.toLowerCase()}`,
  );
  return WORDS[String(path.at(-1))]?.[word] ?? plain.replace(".", ", ");
}

/** What stands faintly in an empty field: the value that holds, without its unit; "" where none does. */
export function heldWords(state: WorkbenchState, path: KeyPath): string {
  const document = shownDocument(state);
  const field = fieldAt(path, document);
  if (!field || field.required) return "";
  if (field.kind === "text") return (field.default ?? "").replaceAll('"', "");
  const units = fileUnitsOf(document);
  const held = heldValue(state.truck, path, units);
  if (held === null) return "";
  if (field.kind !== "length" && field.kind !== "signedLength") return String(held);
  const length = parseLength(held, units);
  if (!length.ok) return "";
  return formatLength(length.mm, lengthFormat(state)).replace(/ (?:in|mm)$/, "");
}

/** What a field may hold, in words: `more than 0 in`, `between −45° and 45°`; null where anything of its sort goes. */
export function rangeWords({ kind, range }: SetupField, format: LengthFormat): string | null {
  const isLength = kind === "length" || kind === "signedLength";
  const told = (value: number) =>
    withMinus(isLength ? formatLength(value, format) : kind === "angle" ? `${value}°` : String(value));
  // Ends that only keep slips of the hand out say nothing.
  const isFar = (end: number | null) => end === null || Math.abs(end) >= (isLength ? MAX_LENGTH : 1e9);
  const least = isFar(range.least) ? null : range.least;
  const most = isFar(range.most) ? null : range.most;
  if (least !== null && most !== null) return `between ${told(least)} and ${told(most)}`;
  if (least !== null) return range.leastExcluded ? `more than ${told(least)}` : `${told(least)} or more`;
  if (most !== null) return range.mostExcluded ? `less than ${told(most)}` : `${told(most)} or less`;
  return null;
}

/**
 * What the button of a suggestion says: `Use 10 3/8 in, the nearest that closes`. @param at the field that it stands by;
 * one for another field names that field
 */
export function suggestionWords(
  state: WorkbenchState,
  { path, value, kind }: Suggestion,
  at: KeyPath,
): string {
  const label = fieldAt(path, shownDocument(state))?.label ?? "the value";
  const isHere = isWithin(path, at) || isWithin(at, path);
  const words = valueWords(state, path, value);
  const what = isHere ? "" : `${label}: `;
  if (value === undefined) return `${what}${isHere ? "Take it out" : "take it out"}, as before`;
  if (kind === "before") return `${what}${isHere ? "Back" : "back"} to ${words ?? "what stood there"}`;
  return `${what}${isHere ? "Use" : "use"} ${words ?? "the nearest"}, the nearest that closes`;
}

/** A value of the file as a person reads it, in the units shown: `10 3/8 in`, `8.5°`; null for what is no single value. */
export function valueWords(state: WorkbenchState, path: KeyPath, value: unknown): string | null {
  const pair = typedPair(value);
  if (pair) return `${valueWords(state, path, pair.value)} ± ${valueWords(state, path, pair.within)}`;
  if (typeof value !== "number" && typeof value !== "string") return null;
  const document = shownDocument(state);
  const field = fieldAt(path, document);
  const units = fileUnitsOf(document);
  if (field?.kind === "angle") return withMinus(`${value}°`);
  if (field?.kind === "choice") return choiceWords(path, String(value));
  if (field?.kind === "quantity" && !/[a-z]/i.test(String(value)))
    return `${value} ${unitHint(field, units)}`;
  if (field?.kind !== "length" && field?.kind !== "signedLength") return String(value);
  const length = parseLength(value, units);
  return length.ok ? withMinus(formatLength(length.mm, lengthFormat(state))) : String(value);
}

/** The unit of bare text in a field, as it stands behind it; "" = none. */
export function unitHint(field: SetupField, units: FileUnits): string {
  switch (field.kind) {
    case "length":
    case "signedLength":
      return units;
    case "angle":
      return "°";
    case "quantity": {
      const nature = numberNature(field.schema);
      return nature?.kind === "quantity" ? bareUnit(nature.quantity, units) : "";
    }
    default:
      return "";
  }
}
