import { buildWorkbench } from "../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../src/serve/staticServer.ts";
import { type Killed, killWhileTyping, type Loss } from "../browser/harness/killedWhileTyping.ts";
import { printColumns } from "./printColumns.ts";
import { printTargets } from "./targets.ts";

/**
 * What a kill in the middle of typing costs: the built page in a real browser on a busy machine, a hub face typed key by
 * key, its process ended without a warning at a random moment, the page opened again.
 *
 * `npm run bench:kills [kills of a tab] [kills of the whole browser]`
 */
const [tabs = 100, browsers = 20] = process.argv.slice(2).map(Number);
/** ms. Nothing typed longer ago may be gone. */
const OLDEST = 250;

const server = await serveFolder(await buildWorkbench());
try {
  const kills = { tab: await killed("tab", tabs), browser: await killed("browser", browsers) };
  printColumns([
    [
      "killed",
      "times",
      "lost nothing",
      "lost what the page had heard",
      "oldest lost: median",
      "nine in ten",
      "worst",
    ],
    ...Object.entries(kills).map(([what, losses]) => [
      what === "tab" ? "the tab's process" : "the whole browser",
      String(losses.length),
      String(losses.filter(({ age }) => age === 0).length),
      String(losses.filter(({ kept, heard }) => kept < heard).length),
      ...[0.5, 0.9, 1].map((share) => `${Math.round(ageAt(losses, share))} ms`),
    ]),
  ]);
  console.log(
    "times: wall clock from the sending of the key to the kill, as many processes spinning as there are processors",
  );
  printTargets(
    Object.entries(kills).map(([what, losses]) => ({
      what: `oldest key lost when ${what === "tab" ? "a tab" : "the browser"} is killed`,
      found: ageAt(losses, 1),
      limit: { atMost: OLDEST },
      unit: "ms",
    })),
  );
} finally {
  await server.close();
}

async function killed(what: Killed, times: number): Promise<readonly Loss[]> {
  const losses: Loss[] = [];
  for (let i = 0; i < times; i++) {
    const loss = await killWhileTyping({ killed: what, address: server.address, random: Math.random });
    losses.push(loss);
    if (process.stdout.isTTY || loss.age > 0 || (i + 1) % 10 === 0)
      console.log(
        `${what} ${i + 1}: ${loss.kept} of ${loss.sent} keys kept, oldest lost ${Math.round(loss.age)} ms`,
      );
  }
  return losses;
}

/** ms: the age that this share of the losses does not pass. */
function ageAt(losses: readonly Loss[], share: number): number {
  const ages = losses.map(({ age }) => age).sort((a, b) => a - b);
  return ages[Math.max(0, Math.ceil(share * ages.length) - 1)] ?? 0;
}
