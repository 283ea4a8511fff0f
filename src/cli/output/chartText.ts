import { chartCsv } from "../../studies/chart/chartCsv.ts";
import type { CellDocument, ChartDocument } from "../../studies/chart/chartDocument.ts";
import { jsonText } from "../../studies/documents/jsonText.ts";
import { ExitCode } from "../asked/inputError.ts";
import { chartTable } from "./chartTable.ts";

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
