import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { fieldDraft } from "../../state/selectors.ts";
import { unusualAt } from "../../state/useDoubts.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";

/** A number that no further key needs to make whole: plain, or with a fraction that a tape has. */
const WHOLE = /^\s*[-+−]?(\d+|\d*\.\d+|(\d+[ -])?\d+\/(2|4|8|16|32|64))$/;

/**
 * Puts a text that is a whole number into a field while more may be typed, so that what follows can be seen: where the field can hold
 * it, the truck goes together with it and nothing about it is unusual. Else nothing at all changes: half of a number is no mistake.
 * @returns whether the field holds it now
 */
export function takeWhole(
  store: Pick<WorkbenchStore, "getState" | "setState">,
  path: KeyPath,
  text: string,
): boolean {
  if (!WHOLE.test(text)) return false;
  const before = store.getState();
  if (before.truck === null || before.issues.length > 0) return false;
  const wasUnusual = unusualAt(before, path).length;
  before.editField(path, text);
  const now = store.getState();
  const isFit =
    now.issues.length === 0 && fieldDraft(now, path) === null && unusualAt(now, path).length <= wasUnusual;
  if (!isFit) {
    const { document, drafts, travel } = before;
    store.setState({ document, drafts, travel });
  }
  return isFit;
}
