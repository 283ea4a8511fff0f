/// <reference lib="webworker" />
import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { geometryReport } from "../../studies/geometry/geometryReport.ts";
import { limitsOf } from "../../studies/limits/limitsOf.ts";
import { pageBudget } from "./pageBudget.ts";
import type { ReportAnswer, ReportRequest } from "./reportMessages.ts";

/** Rows of the geometry's tables. */
const ROWS = 33;

addEventListener("message", ({ data }: MessageEvent<ReportRequest>) => postMessage(answerTo(data)));

function answerTo({ id, kind, ...ask }: ReportRequest): ReportAnswer {
  try {
    const built = modelAsked(ask);
    if (!built.ok) return { id, ok: false, message: built.issues.map(formatIssue).join("; ") };
    const { model } = built;
    return {
      id,
      ok: true,
      report: kind === "limits" ? limitsOf(model, pageBudget()) : geometryReport(model, ROWS),
    };
  } catch (error) {
    return { id, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}
