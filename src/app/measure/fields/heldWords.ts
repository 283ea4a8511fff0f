import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { formatLength } from "../../../units/formatLength.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import type { WorkbenchState } from "../../state/workbenchState.ts";
import { heldValue } from "./heldValue.ts";

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
