import { asExample } from "../../setup/exampleMarks.ts";
import { valueAt } from "../../setup/types/keyPath.ts";

/** The text of an example's file with its numbers marked as an example's: what is made of it is not yet anybody's truck. */
export function exampleText(text: string): string {
  const document: unknown = JSON.parse(text);
  return JSON.stringify(asExample(document, String(valueAt(document, ["name"]))));
}
