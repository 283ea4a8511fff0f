import { cutShortSentence } from "../../studies/wording/answerWords.ts";

/** Where a budget ended the study, the line that says so; else nothing. */
export function cutShortLine(
  study: Parameters<typeof cutShortSentence>[0],
  { cutShort }: { readonly cutShort?: true },
): string {
  return cutShort ? `${cutShortSentence(study, "Give it more with --budget SECONDS.")}\n` : "";
}
