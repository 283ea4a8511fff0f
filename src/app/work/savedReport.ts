import type { Truck } from "../state/truck.ts";
import type { Wish } from "./answerCache.ts";
import type { Question, SavedContent } from "./jobs.ts";
import { work } from "./work.ts";

/**
 * A document or a file of a truck, worked out beside the page. @throws Error why there is none. @param signal gives it up
 * @param onShare hears the share done, 0 … 1, of what tells it
 */
export function savedReport(
  truck: Truck,
  ask: Question<"report">,
  signal: AbortSignal,
  onShare: (share: number) => void,
): Promise<NonNullable<SavedContent["content"]>> {
  const wish: Wish<"report"> = { job: "report", truck, question: ask, given: null };
  const who = {};
  return new Promise((done, failed) => {
    const end = () => {
      stop();
      work.want(who, []);
    };
    const look = () => {
      const { answer, failure, underWay } = work.of(wish);
      if (underWay?.share != null) onShare(underWay.share);
      if (failure === null && answer === null) return;
      end();
      if (answer?.content != null) done(answer.content);
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
