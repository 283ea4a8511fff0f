/// <reference lib="webworker" />
import { formatIssue } from "../../setup/reading/formatIssue.ts";
import { modelAsked } from "../../studies/alignment/modelAsked.ts";
import { drawnEnvelopeOf } from "./drawnEnvelope.ts";
import type { EnvelopeAnswer, EnvelopeRequest } from "./envelopeMessages.ts";

/** ms between two reports of progress. */
const REPORT_EVERY = 100;

// One request a worker: it is stopped by ending the worker, which no work under way can hold up.
addEventListener("message", ({ data }: MessageEvent<EnvelopeRequest>) => {
  try {
    postMessage(answerTo(data));
  } catch (error) {
    postMessage(failed(error instanceof Error ? error.message : String(error)));
  }
});

function answerTo({ edges, choice, travel, ...ask }: EnvelopeRequest): EnvelopeAnswer {
  const built = modelAsked(ask);
  if (!built.ok) return failed(built.issues.map(formatIssue).join("; "));
  let reported = 0;
  const drawn = drawnEnvelopeOf(built.model, { choice, travel }, edges, (share) => {
    const now = performance.now();
    if (now - reported < REPORT_EVERY) return;
    reported = now;
    postMessage({ kind: "progress", share } satisfies EnvelopeAnswer);
  });
  return drawn ? { kind: "done", drawn } : failed("no pose of this range can be reached");
}

function failed(message: string): EnvelopeAnswer {
  return { kind: "failed", message };
}
