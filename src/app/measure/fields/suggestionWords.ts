import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { isWithin, type KeyPath } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Suggestion } from "../../state/suggestion.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";
import { valueWords } from "./valueWords.ts";

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
