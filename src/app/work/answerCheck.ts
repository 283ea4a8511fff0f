import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { checkClearance } from "../../studies/reports/check.ts";
import type { CheckAnswer, CheckRequest } from "./checkMessages.ts";
import { pageBudget } from "./pageBudget.ts";

/** Does what a request asks, wherever it runs. Never throws: a fault is an answer too, or the asker would wait forever. */
export function answerCheck({ id, ...ask }: CheckRequest): CheckAnswer {
  try {
    const built = modelAsked(ask);
    if (!built.ok) {
      return { id, ok: false, code: "setup", message: built.issues.map(formatIssue).join("; ") };
    }
    return { id, ok: true, report: checkClearance(built.model, { budget: pageBudget() }) };
  } catch (error) {
    return { id, ok: false, code: "fault", message: error instanceof Error ? error.message : String(error) };
  }
}
