import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { CATALOG_FILES, type CatalogKind, catalogSchemaText } from "../setup/catalogs/catalogDocument.ts";
import { setupJsonSchemaText } from "../setup/documentText.ts";

/**
 * Writes the JSON Schemas: the setup file's to `public/`, where the workbench and the package publish it, and those of the
 * catalogs beside them.
 */
write("public/wellsweep-setup.schema.json", setupJsonSchemaText());
for (const [kind, name] of Object.entries(CATALOG_FILES))
  write(`shared/catalogs/${name}.schema.json`, catalogSchemaText(kind as CatalogKind));

function write(file: string, text: string): void {
  const target = fileURLToPath(new URL(`../../${file}`, import.meta.url));
  writeFileSync(target, text);
  console.log(`wrote ${target}`);
}
