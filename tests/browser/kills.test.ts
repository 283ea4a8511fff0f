import { expect, inject, it } from "vitest";
import { type Killed, killWhileTyping } from "./harness/killedWhileTyping.ts";

/** ms. What was typed longer before the kill must be there when the page is opened again. */
const OLDEST = 250;

/** From 0 to below 1, the same on every run. */
function drawer(seed: number): () => number {
  let at = seed;
  return () => {
    at = (at * 16807) % 2147483647;
    return at / 2147483647;
  };
}

it.each([
  { killed: "tab", kills: 4 },
  { killed: "browser", kills: 1 },
] satisfies readonly { killed: Killed; kills: number }[])(
  "nothing typed is lost but of the last moment when the $killed is killed",
  async ({ killed, kills }) => {
    const bench = inject("bench");
    if (!bench.ready) throw new Error(bench.why);
    const random = drawer(1908);
    for (let i = 0; i < kills; i++) {
      // No load beside: what a busy machine does to it is for `npm run bench:kills` to tell.
      const loss = await killWhileTyping({ killed, address: bench.address, load: 0, random });
      expect(loss.sent).toBeGreaterThan(4);
      expect(loss.age, `of ${loss.sent} keys ${loss.kept} were kept`).toBeLessThanOrEqual(OLDEST);
    }
  },
);
