import { expect, it } from "vitest";
import { AnswerCache } from "../../../src/app/work/answerCache.ts";

it("gives a file that is saved longer than anything that is waited for", () => {
  const cache = new AnswerCache(2);
  expect(cache.secondsFor("report")).toBeGreaterThan(60);
  for (const job of ["check", "map", "envelope", "odds"] as const)
    expect(cache.secondsFor("report")).toBeGreaterThan(cache.secondsFor(job));
});
