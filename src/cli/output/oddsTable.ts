import type { Setup } from "../../setup/types/types.ts";
import type { OddsReport } from "../../studies/odds/oddsOf.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import {
  againSentence,
  matterRows,
  type OddsSpeech,
  oddsNotes,
  oddsSentence,
} from "../../studies/wording/oddsWords.ts";
import { type Column, cutShortLine, heading, textTable } from "./textTable.ts";

const COLUMNS: readonly Column[] = [
  { header: "What matters", align: "left" },
  { header: "Known to", align: "left" },
  { header: "By", align: "left" },
  { header: "Share", align: "right" },
  { header: "Twice as well, clears", align: "right" },
];

/** Odds as a person reads them: the sentence, what to measure again, what matters. */
export function oddsTable(report: OddsReport, setup: Setup, speech: OddsSpeech): string {
  const again = againSentence(report, speech);
  const said = [oddsSentence(report, { setup }), ...(again === null ? [] : [again])];
  const rows = matterRows(report, speech).map(({ name, within, source, shareText, again: then }) => [
    name,
    within,
    source,
    shareText,
    then,
  ]);
  return [
    `${heading(setup)}\n${said.join("\n")}\n${cutShortLine("odds", report)}`,
    ...(rows.length > 0 ? [textTable(COLUMNS, rows)] : []),
    `${oddsNotes(report, speech).join("\n")}\n`,
    CAUTIONS,
  ].join("\n");
}
