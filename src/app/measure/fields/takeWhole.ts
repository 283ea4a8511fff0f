import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { fieldDraft, fieldText } from "../../state/selectors.ts";
import { unusualAt } from "../../state/useDoubts.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";

/** A number that no further key needs to make whole: plain, or with a fraction that a tape has. */
const WHOLE = /^\s*[-+−]?(\d+|\d*\.\d+|(\d+[ -])?\d+\/(2|4|8|16|32|64))$/;

/** Times what stands there, or one part of it: a number farther off is most likely the first digits of another. */
const FAR = 4;

/**
 * Whether a number is so far from the one that stands there that more digits are to come: the 1 of a 10 where there was 8.5. Where
 * nothing or zero stands there, nobody can tell.
 */
function isBegun(text: string, standing: string): boolean {
  const [typed, now] = [text, standing].map((one) => parseLength(one.replace("−", "-"), "in"));
  if (!typed!.ok || !now!.ok || now!.mm === 0) return false;
  const times = typed!.mm / now!.mm;
  return times < 1 / FAR || times > FAR;
}

/**
 * Puts a text that is a whole number into a field while more may be typed, so that what follows can be seen: where the field can hold
 * it, the truck goes together with it, nothing about it is unusual, and it is not far from what stands there. Else nothing at all changes: half of a number is no mistake.
 * @returns whether the field holds it now
 */
export function takeWhole(
  store: Pick<WorkbenchStore, "getState" | "setState">,
  path: KeyPath,
  text: string,
): boolean {
  if (!WHOLE.test(text)) return false;
  const before = store.getState();
  if (before.truck === null || before.issues.length > 0 || isBegun(text, fieldText(before, path)))
    return false;
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
