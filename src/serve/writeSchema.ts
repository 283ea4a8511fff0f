import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { setupJsonSchemaText } from "../setup/documentText.ts";

/** Writes the JSON Schema of the setup file to `public/`, where the workbench and the package publish it. */
const target = fileURLToPath(new URL("../../public/wellsweep-setup.schema.json", import.meta.url));
writeFileSync(target, setupJsonSchemaText());
console.log(`wrote ${target}`);
