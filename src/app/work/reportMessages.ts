import type { ModelAsk } from "../../studies/alignment/modelAsked.ts";
import type { GeometryReport } from "../../studies/geometry/geometryReport.ts";
import type { LimitsReport } from "../../studies/limits/limitsOf.ts";

/** What can be worked out of a whole truck, beside the check and the map. */
export interface Reports {
  readonly limits: LimitsReport;
  readonly geometry: GeometryReport;
}
export type ReportKind = keyof Reports;

/** Numbered, so that an answer can be matched to its question. */
export interface ReportRequest extends ModelAsk {
  readonly id: number;
  readonly kind: ReportKind;
}

export type ReportAnswer =
  | { readonly id: number; readonly ok: true; readonly report: Reports[ReportKind] }
  | { readonly id: number; readonly ok: false; readonly message: string };
