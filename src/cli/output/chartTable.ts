import { type CellDocument, type ChartDocument, chartCsv } from "../../studies/chart/chartDocument.ts";
import { jsonText } from "../../studies/documents/documentText.ts";
import { CAUTIONS } from "../../studies/wording/cautions.ts";
import {
  chartSentences,
  legendSentence,
  plainCell,
  posesSentence,
} from "../../studies/wording/chartWords.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { ExitCode } from "../asked/inputError.ts";
import { cutShortLine, textTable } from "./textTable.ts";

/** A chart as a person reads it on a terminal: x across, y down, the truck as it stands in brackets. */
function chartTable(chart: ChartDocument): string {
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

/** A chart as it is asked for. @param beside what stands beside it in its document */
export function chartText(
  chart: ChartDocument,
  beside: object,
  { json, csv }: { readonly json?: true; readonly csv?: true },
): string {
  if (json) return jsonText({ ...chart, ...beside });
  return csv ? chartCsv(chart) : chartTable(chart);
}

/** Whether the truck as it stands rubs; of a chart it is not on, whether all of it does. */
export function chartExitCode({ present, cells }: ChartDocument): ExitCode {
  const isGood = (cell: CellDocument) => "verdict" in cell && cell.verdict !== "rubs";
  const isFine = present === null ? cells.flat().some(isGood) : isGood(cells[present.row]![present.column]!);
  return isFine ? ExitCode.Fine : ExitCode.Rubs;
}
