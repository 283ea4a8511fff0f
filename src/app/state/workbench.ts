import demo from "../../../shared/half-ton-limits.json?raw";
import { exampleText } from "./exampleText.ts";
import { createWorkbenchStore } from "./workbenchStore.ts";

/** The one store of the page; it opens with the example truck. */
export const workbench = createWorkbenchStore(exampleText(demo), "half-ton-limits.json");
