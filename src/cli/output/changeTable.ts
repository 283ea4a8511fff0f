import type { Setup } from "../../setup/types/types.ts";
import type { ChangeReport } from "../../studies/change/changeTypes.ts";
import type { WrittenSheet } from "../../studies/documents/sheetJson.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import {
  type ChangeSpeech,
  changeSentence,
  changeTitle,
  movesSentences,
} from "../../studies/wording/changeWords.ts";
import { PRINT_AT_SIZE } from "../../studies/wording/drawingWords.ts";
import { TRIM_CAUTION } from "../../studies/wording/trimWords.ts";
import { writtenTable } from "./sheetTable.ts";
import { cutShortLine, heading } from "./textTable.ts";

/** Changes as a person reads them: least effort first, with what each moves besides. */
export function changeTable(
  report: ChangeReport,
  setup: Setup,
  speech: ChangeSpeech,
  written: readonly WrittenSheet[],
): string {
  const list = report.changes.map(
    (change, i) =>
      `${i + 1}. ${changeTitle(change, speech)}.\n${movesSentences(change, speech)
        .map((sentence) => `   ${sentence}\n`)
        .join("")}`,
  );
  return [
    `${heading(setup)}\n${changeSentence(report, speech)}\n${cutShortLine("change", report)}`,
    list.join(""),
    ...(written.length === 0 ? [] : [writtenTable(written), `${TRIM_CAUTION}\n${PRINT_AT_SIZE}\n`]),
    CAUTIONS,
  ]
    .filter((block) => block !== "")
    .join("\n");
}
