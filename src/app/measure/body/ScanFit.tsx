import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { scanFitSentence } from "../../../studies/wording/gaugeWords.ts";
import { scanFit } from "../../../studies/worksheet/scanFit.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** How well a scan's matched points go together; nothing while they are not all there. @param path of the body part */
export function ScanFit({ path }: { path: KeyPath }) {
  const format = useWorkbench(lengthFormat);
  const document = useWorkbench(shownDocument);
  const fit = scanFit(document, path, fileUnitsOf(document) === "mm" ? "mm" : "in");
  return fit && <p className="part-note">{scanFitSentence(fit, format)}</p>;
}
