import { formatIssue } from "../../setup/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { checkClearance } from "../../studies/check.ts";
import type { CheckAnswer, CheckRequest } from "./checkMessages.ts";

/** Does what a request asks, wherever it runs. Never throws: a fault is an answer too, or the asker would wait forever. */
export function answerCheck({ id, ...ask }: CheckRequest): CheckAnswer {
  try {
    const built = modelAsked(ask);
    if (!built.ok) {
      return { id, ok: false, code: "setup", message: built.issues.map(formatIssue).join("; ") };
    }
    const report = checkClearance(built.model);
    if (report === null) throw new Error("the check was stopped");
    return { id, ok: true, report };
  } catch (error) {
    return { id, ok: false, code: "fault", message: error instanceof Error ? error.message : String(error) };
  }
}
