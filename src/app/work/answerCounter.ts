import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { heightStop } from "../../studies/limits/heightWay.ts";
import { steerLimits } from "../../studies/map/steerLimits.ts";
import { checkClearance } from "../../studies/reports/check.ts";
import type { CounterAnswer, CounterRequest } from "./counterMessages.ts";
import { pageBudget } from "./pageBudget.ts";

/** Answers a request bit by bit, wherever it runs. Never throws: a fault is an answer too. */
export function answerCounter(request: CounterRequest, answer: (answer: CounterAnswer) => void): void {
  const { id, travels } = request;
  try {
    const built = modelAsked(request);
    if (!built.ok) throw new Error(built.issues.map(formatIssue).join("; "));
    const { model } = built;
    const heights = travels.map((travel) => heightStop(model, travel, pageBudget()));
    answer({ id, kind: "steering", steering: steerLimits(model, travels, pageBudget()), heights });
    answer({ id, kind: "check", report: checkClearance(model, { budget: pageBudget() }) });
  } catch (error) {
    answer({ id, kind: "failed", message: error instanceof Error ? error.message : String(error) });
  }
}
