import { fieldAt } from "../../setup/fieldCatalogue.ts";
import { fieldLabel } from "../../setup/fields/fieldLabels.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";

/** Why a list of fields that can be given other values leaves some out. */
export const NOT_VARIED =
  "Weights, air pressures and load curves are not listed: no gap and no curve depends on them. Air springs and Loads tell what they do.";

/**
 * Under what a field stands in a list of many: its block, of the truck the part of it, of the body the part by its name.
 * @param document as for `fieldName`
 */
export function fieldGroup(path: KeyPath, document: unknown): string {
  if (path[0] !== "truck") return fieldLabel([String(path[0])], "");
  return path[1] === "body"
    ? fieldName(path.slice(0, 3), document)
    : fieldLabel(path.slice(0, 2).map(String), "");
}

/**
 * What a place of a setup is called on a form: `Hub face`, `Body parts “fender lip”: point 3, y`, `Upper ball joint`. A key
 * that no field has is quoted as it stands.
 * @param document the setup, a variant's patch applied where the place is in one
 */
export function fieldName(path: KeyPath, document: unknown): string {
  let name = "";
  const add = (words: string, join: string) => {
    name += name === "" ? words : `${join}${words}`;
  };
  for (const [i, step] of path.entries()) {
    const here = path.slice(0, i + 1);
    const field = fieldAt(here, document);
    if (typeof step === "number") {
      const own = valueAt(document, [...here, "name"]);
      if (typeof own === "string" && own !== "") name += `${name === "" ? "" : " "}“${own}”`;
      else if (typeof path[i + 1] === "number" && !/^\w{2}/.test(field?.label ?? ""))
        add(`point ${step + 1}`, ": ");
      else if (field && /^[a-z]$/.test(field.label)) add(field.label, ", ");
      else if (field?.kind === "signedLength" || field?.kind === "number") add("xyz"[step] ?? "", ", ");
      else add(`${(field?.label ?? "entry").toLowerCase()} ${step + 1}`, ": ");
      continue;
    }
    const next = path[i + 1];
    // A block is named by the fields in it.
    if (typeof next === "string" && fieldAt([...here, next], document) !== null) continue;
    const label = field?.label ?? `“${step}”`;
    add(name === "" ? label : label.charAt(0).toLowerCase() + label.slice(1), ": ");
  }
  return name;
}
