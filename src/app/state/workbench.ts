import demo from "../../../shared/half-ton-limits.json?raw";
import { asExample } from "../../setup/exampleMarks.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import { createWorkbenchStore } from "./workbenchStore.ts";

/** The text of an example's file with its numbers marked as an example's: what is made of it is not yet anybody's truck. */
export function exampleText(text: string): string {
  const document: unknown = JSON.parse(text);
  return JSON.stringify(asExample(document, String(valueAt(document, ["name"]))));
}

/** The one store of the page; it opens with the example truck. */
export const workbench = createWorkbenchStore(exampleText(demo), "half-ton-limits.json");

/** The example that the page came with: on the board until something worked on before, or shared, takes its place. */
export const firstDocumentId = workbench.getState().documentId;
