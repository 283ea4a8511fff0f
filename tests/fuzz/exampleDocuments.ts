import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Json } from "./jsonPaths.ts";

const SHARED = join(import.meta.dirname, "../../shared");

/** A setup document that is an object, as all examples are. */
export type SetupJson = { readonly [key: string]: Json };

/** Every example of `shared`, by name. Its mesh files are named so that they are found from the project's folder. */
export const exampleDocuments: ReadonlyMap<string, SetupJson> = new Map(
  readdirSync(SHARED)
    .filter((name) => name.endsWith(".json"))
    .map((name) => [name, readFileSync(join(SHARED, name), "utf8")] as const)
    .filter(([, text]) => text.includes('"wellsweep-setup"'))
    .map(([name, text]) => {
      const document = text.replaceAll(/"file": "(\w)/g, '"file": "shared/$1');
      return [name.replace(".json", ""), JSON.parse(document) as SetupJson];
    }),
);
