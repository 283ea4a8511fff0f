import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { withMinus } from "../../../studies/wording/withMinus.ts";
import { formatLength } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";

/** A value of the file as a person reads it, in the units shown: `10 3/8 in`, `8.5°`; null for what is no single value. */
export function valueWords(state: WorkbenchState, path: KeyPath, value: unknown): string | null {
  if (typeof value !== "number" && typeof value !== "string") return null;
  const document = shownDocument(state);
  const kind = fieldAt(path, document)?.kind;
  if (kind === "angle") return withMinus(`${value}°`);
  if (kind !== "length" && kind !== "signedLength") return String(value);
  const length = parseLength(value, fileUnitsOf(document));
  return length.ok ? withMinus(formatLength(length.mm, lengthFormat(state))) : String(value);
}
