import { formatIssue } from "../../setup/reading/issueList.ts";
import { type ModelAsk, modelAsked } from "../../studies/alignment/modelAsked.ts";
import type { Model } from "../../studies/model/model.ts";
import { Budget } from "../../studies/numeric/budget.ts";
import { type Answer, type Given, JOBS, type JobName, type Question } from "./jobs.ts";

/** What a worker is asked. Trucks and other things handed over are numbered, and come along once. */
export interface WorkRequest<J extends JobName = JobName> {
  /** Matches the replies to the question. */
  readonly id: number;
  readonly job: J;
  readonly question: Question<J>;
  /** null = as long as it takes. */
  readonly seconds: number | null;
  /** The truck from now on; left out = that of the request before. */
  readonly truck?: ModelAsk;
  /** Likewise. */
  readonly given?: Given<J>;
}

/** What it replies: progress now and then, then one of the other two. */
export type WorkReply<J extends JobName = JobName> = { readonly id: number } & (
  | { readonly kind: "progress"; readonly share: number }
  | { readonly kind: "done"; readonly answer: Answer<J>; readonly isCut: boolean }
  | { readonly kind: "failed"; readonly message: string }
);

/** ms between two reports of progress. */
const REPORT_EVERY = 100;

/**
 * Does what requests ask, one after the other, wherever it runs. Never throws: a fault is a reply too, or the asker
 * would wait forever.
 */
export function answererOf(reply: (reply: WorkReply, handOver: readonly ArrayBufferLike[]) => void) {
  let truck: ModelAsk | null = null;
  let model: Model | null = null;
  let given: unknown = null;
  return (request: WorkRequest): void => {
    const { id, seconds } = request;
    if (request.truck !== undefined) {
      truck = request.truck;
      model = null;
    }
    if (request.given !== undefined) given = request.given;
    let reported = 0;
    const onProgress = (share: number) => {
      const now = performance.now();
      if (now - reported < REPORT_EVERY) return;
      reported = now;
      reply({ id, kind: "progress", share }, []);
    };
    try {
      const clock = () => performance.now();
      const budget = seconds === null ? Budget.endless() : Budget.of(seconds, clock);
      const asked = () => {
        model ??= modelFrom(truck);
        return model;
      };
      const { answer, isCut } = JOBS[request.job]({
        model: asked,
        question: request.question,
        given,
        budget,
        onProgress,
      } as never);
      reply({ id, kind: "done", answer, isCut }, handedOver(answer));
    } catch (error) {
      reply({ id, kind: "failed", message: error instanceof Error ? error.message : String(error) }, []);
    }
  };
}

function modelFrom(truck: ModelAsk | null): Model {
  if (truck === null) throw new Error("no truck was handed over");
  const built = modelAsked(truck);
  if (!built.ok) throw new Error(built.issues.map(formatIssue).join("; "));
  return built.value;
}

/** Millions of triangles are handed over, not copied. */
function handedOver(answer: Answer<JobName>): ArrayBufferLike[] {
  if (answer === null || !("mesh" in answer)) return [];
  return [answer.mesh.positions.buffer, answer.mesh.triangles.buffer];
}
