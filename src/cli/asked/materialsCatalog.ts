import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Material, readMaterials } from "../../setup/catalogs/readMaterials.ts";
import { ownPackage } from "../disk/ownPackage.ts";
import { InputError } from "./inputError.ts";

/** The materials that come with the program. @throws InputError for one that does not read */
export function materialsCatalog(): readonly Material[] {
  const file = join(ownPackage().folder, "shared", "catalogs", "materials.json");
  let document: unknown;
  try {
    document = JSON.parse(readFileSync(file, "utf8"));
  } catch {
    throw InputError.ofFile(file, "cannot be read as JSON; put the program's own catalog back");
  }
  const read = readMaterials(document, file);
  if (read.ok) return read.value;
  const [first, ...rest] = read.issues;
  throw new InputError([first!, ...rest]);
}
