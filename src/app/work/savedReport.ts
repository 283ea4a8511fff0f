import type { Truck } from "../state/truck.ts";
import type { Wish } from "./answerCache.ts";
import type { Answer, JobName, Question, SavedContent } from "./jobs.ts";
import { work } from "./work.ts";

/**
 * The answer to one question about a truck, worked out beside the page: of one cut short what the longer search after it brings, as
 * long as that is neither stopped nor fails. @throws Error why there is none. @param signal gives it up
 * @param onShare hears the share done, 0 … 1, of what tells it
 */
export function answerOnce<J extends JobName>(
  wish: Wish<J>,
  signal: AbortSignal,
  onShare: (share: number) => void,
): Promise<Answer<J>> {
  const who = {};
  return new Promise((done, failed) => {
    const end = () => {
      stop();
      work.want(who, []);
    };
    const look = () => {
      const { answer, failure, underWay } = work.of(wish);
      if (underWay?.share != null) onShare(underWay.share);
      if (work.isToCome(wish as Wish<never>)) return;
      end();
      if (answer !== null) done(answer);
      else failed(new Error(failure ?? "there is no answer to save"));
    };
    const stop = work.subscribe(look);
    signal.addEventListener("abort", () => {
      end();
      failed(new Error("given up"));
    });
    work.want(who, [wish as Wish<never>]);
    look();
  });
}

/** A document or a file of a truck, the same way. @throws Error why there is none */
export async function savedReport(
  truck: Truck,
  ask: Question<"report">,
  signal: AbortSignal,
  onShare: (share: number) => void,
): Promise<NonNullable<SavedContent["content"]>> {
  const wish: Wish<"report"> = { job: "report", truck, question: ask, given: null };
  const { content } = await answerOnce(wish, signal, onShare);
  if (content === null) throw new Error("there is no answer to save");
  return content;
}
