import type { ChartDocument } from "../../studies/chart/chartDocument.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import {
  chartSentences,
  legendSentence,
  plainCell,
  posesSentence,
} from "../../studies/wording/chartWords.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { cutShortLine } from "./cutShortLine.ts";
import { textTable } from "./textTable.ts";

/** A chart as a person reads it on a terminal: x across, y down, the truck as it stands in brackets. */
export function chartTable(chart: ChartDocument): string {
  const format = formatOf(chart);
  const { x, y, present, cells } = chart;
  const columns = [
    { header: `${y.name} \\ ${x.name}`, align: "left" as const },
    ...x.labels.map((header) => ({ header, align: "right" as const })),
  ];
  const rows = cells.map((row, j) => [
    y.labels[j]!,
    ...row.map((cell, i) => {
      const text = plainCell(cell, format);
      return present?.column === i && present.row === j ? `[${text}]` : text;
    }),
  ]);
  const sentences = [...chartSentences(chart, format), posesSentence(chart, format)].join("\n");
  return [
    `${chart.of}\n${sentences}\n${cutShortLine("chart", chart)}`,
    textTable(columns, rows),
    `${legendSentence(chart, format, true)}\n`,
    CAUTIONS,
  ].join("\n");
}
