import { expect, inject, it } from "vitest";
import { type Killed, killWhileTyping } from "./harness/killedWhileTyping.ts";

/** ms. A killed browser may owe the disk what was typed in the last moment, and nothing older. */
const LAST_MOMENT = 250;

/** From 0 to below 1, the same on every run. */
function drawer(seed: number): () => number {
  let at = seed;
  return () => {
    at = (at * 16807) % 2147483647;
    return at / 2147483647;
  };
}

// How soon a page hears a key depends on the machine, so that is for `npm run bench:kills` to tell; that nothing it has
// heard is lost does not.
it.each([
  { killed: "tab", kills: 2, rest: undefined },
  { killed: "browser", kills: 1, rest: LAST_MOMENT },
] satisfies readonly { killed: Killed; kills: number; rest: number | undefined }[])(
  "no key that the page has heard is lost when the $killed is killed",
  async ({ killed, kills, rest }) => {
    const bench = inject("bench");
    if (!bench.ready) throw new Error(bench.why);
    const random = drawer(1908);
    for (let i = 0; i < kills; i++) {
      const ask = { killed, address: bench.address, load: 0, random };
      const loss = await killWhileTyping(rest === undefined ? ask : { ...ask, rest });
      expect(loss.sent).toBeGreaterThan(4);
      expect(loss.kept, JSON.stringify(loss)).toBeGreaterThanOrEqual(loss.heard);
    }
  },
  300_000,
);
