import { type Json, pathsIn, withValue } from "./jsonPaths.ts";

/** A failing setup with all taken out that it fails without. */
export function smallest(text: string, fails: (text: string) => boolean): string {
  let document: Json;
  try {
    document = JSON.parse(text) as Json;
  } catch {
    return text; // it fails as a text
  }
  // Whatever is taken out, something else may no longer be needed: until nothing is.
  for (let shrunk = true; shrunk; ) {
    shrunk = false;
    for (const path of pathsIn(document).reverse()) {
      let without: Json;
      try {
        without = withValue(document, path, undefined);
      } catch {
        continue; // gone with what it was in
      }
      if (!fails(JSON.stringify(without))) continue;
      document = without;
      shrunk = true;
    }
  }
  return JSON.stringify(document, null, 2);
}
