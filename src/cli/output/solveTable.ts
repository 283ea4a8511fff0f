import type { SolveReport } from "../../studies/solve/solveTypes.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import { solveSentences } from "../../studies/wording/solveWords.ts";
import type { WindowSpeech } from "../../studies/wording/windowWords.ts";
import { cutShortLine, heading } from "./textTable.ts";

/** What was solved for as a person reads it. */
export function solveTable(report: SolveReport, speech: WindowSpeech): string {
  return `${heading(speech.model.setup)}\n${solveSentences(report, speech).join("\n")}\n${cutShortLine("solve", report)}\n${CAUTIONS}`;
}
