import { resolve } from "node:path";
import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { buildWorkbench } from "../../../src/serve/buildWorkbench.ts";
import { serveFolder } from "../../../src/serve/staticServer.ts";
import { findBrowser } from "./findBrowser.ts";

/** What the browser tests get from the one build, server and browser of a run; or why there is none. */
export type Bench =
  | {
      readonly ready: true;
      readonly address: string;
      readonly browserEndpoint: string;
      readonly browser: string;
    }
  | { readonly ready: false; readonly why: string };

declare module "vitest" {
  interface ProvidedContext {
    bench: Bench;
  }
}

/**
 * Without a graphics card the page itself is put together sooner by the processor than by WebGL drawn in software, which
 * takes ten times as long for a picture of the page; what the page draws by WebGL is drawn as it was.
 */
const PUT_TOGETHER = "--disable-gpu-compositing";

/**
 * Once per run: builds the workbench, where WELLSWEEP_BUILT does not say that `npm run build` has, serves it and starts one
 * browser. A failure is handed on, so that it fails every browser test with its reason and the tests that need no browser
 * still run.
 */
export default async function setUpBench(project: TestProject): Promise<() => Promise<void>> {
  const closers: (() => Promise<void>)[] = [];
  const tearDown = async (): Promise<void> => {
    for (const close of closers.splice(0).reverse()) await close();
  };
  try {
    const server = await serveFolder(await built());
    closers.push(() => server.close());
    const found = await findBrowser();
    const browser = await chromium.launchServer({
      executablePath: found.executablePath,
      args: [...found.args, PUT_TOGETHER],
      env: { ...found.env },
    });
    closers.push(() => browser.close());
    project.provide("bench", {
      ready: true,
      address: server.address,
      browserEndpoint: browser.wsEndpoint(),
      browser: `${found.executablePath} (${found.source})`,
    });
  } catch (error) {
    await tearDown();
    project.provide("bench", { ready: false, why: error instanceof Error ? error.message : String(error) });
  }
  return tearDown;
}

declare global {
  /** The one build of this process: each project sets up a bench of its own. */
  var wellsweepBuild: Promise<string> | undefined;
}

/** The folder that holds the built page. */
function built(): Promise<string> {
  if (process.env.WELLSWEEP_BUILT !== undefined) return Promise.resolve(resolve("dist", "app"));
  globalThis.wellsweepBuild ??= buildWorkbench();
  return globalThis.wellsweepBuild;
}
