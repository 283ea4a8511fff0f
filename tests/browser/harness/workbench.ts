import { join } from "node:path";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, inject, onTestFailed, onTestFinished } from "vitest";
import type { Rims } from "../../../src/app/stage/drawing.ts";

/** `viewport`, `colorScheme` and whatever else a page can be opened with; `path` is below the served address. */
export type OpenOptions = BrowserContextOptions & {
  readonly path?: string;
  /** Without its 3D picture, which has tests of its own and takes most of the time of a software renderer. */
  readonly isBare?: boolean;
  /** Kept for use without a network, which takes as long as coming up. */
  readonly isKept?: boolean;
  /** Seconds the page gives a search; default more than any takes, so that no answer depends on how busy the machine is. */
  readonly seconds?: number;
};

/** The built workbench in a page of its own (own storage, own permissions). */
export interface Workbench {
  readonly page: Page;
  /** Errors on the console or thrown, requests that failed, and requests to anywhere but the local server, so far. */
  problems(): readonly string[];
  close(): Promise<void>;
}

/** Seconds. */
const PLENTY = 100;

/** For all files that this process runs; it ends with the browser. */
let connection: Promise<Browser> | undefined;

/**
 * Opens the workbench that this run built, in the browser that this run started, and waits until it has loaded.
 * A page left open is closed after its test: it would go on drawing.
 * @throws Error with the reason if the build or the browser failed
 */
export async function openWorkbench(options: OpenOptions = {}): Promise<Workbench> {
  const opened = await openPage(options);
  onTestFinished(() => opened.close());
  return opened;
}

/**
 * One page for many tests: most of what a test takes is a page coming up. Each test brings about itself what it needs and
 * does not take from the one before. A page on which a test failed is thrown away, so that no other fails by it.
 * @param options what each page is opened with
 * @returns gives the page, whose problems are counted from then on
 */
export function sharedWorkbench(options: OpenOptions = {}): () => Promise<Workbench> {
  let kept: Promise<Workbench> | undefined;
  const close = async () => {
    const bench = await kept;
    kept = undefined;
    await bench?.close();
  };
  afterAll(close);
  return async () => {
    onTestFailed(close);
    kept ??= openPage(options);
    const { page, problems, close: closePage } = await kept;
    const before = problems().length;
    return { page, problems: () => problems().slice(before), close: closePage };
  };
}

async function openPage(options: OpenOptions): Promise<Workbench> {
  const bench = inject("bench");
  if (!bench.ready) throw new Error(bench.why);
  const { path = "", isBare = false, isKept = false, seconds = PLENTY, ...contextOptions } = options;
  connection ??= chromium.connect(bench.browserEndpoint);
  const context = await (await connection).newContext({
    viewport: { width: 1280, height: 800 },
    // Nothing plays by itself: what a test reads stands still.
    reducedMotion: "reduce",
    serviceWorkers: isKept ? "allow" : "block",
    ...contextOptions,
  });
  const page = await context.newPage();
  await page.addInitScript((given) => {
    globalThis.wellsweepSeconds = given;
  }, seconds);
  await page.addInitScript((bare) => {
    // Smooth rims take a software renderer most of its time, and come when nothing has moved for a while.
    globalThis.wellsweepRims = "never" satisfies Rims;
    if (!bare) return;
    const { getContext } = HTMLCanvasElement.prototype;
    // Flat drawing, as of a logo, goes on.
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      kind: string,
      options?: object,
    ) {
      return kind.startsWith("webgl") ? null : Reflect.apply(getContext, this, [kind, options]);
    } as typeof getContext;
  }, isBare);
  const found = watch(page, bench.address);
  await page.goto(new URL(path, bench.address).href, { waitUntil: "load" });
  return { page, problems: () => [...found], close: () => context.close() };
}

/**
 * Takes a picture of the page to look at.
 * @param name file name without ending, as in `front-view-dark`
 * @returns the PNG's path, in `tests/.shots/`
 */
export async function shot(page: Page, name: string): Promise<string> {
  const path = join(import.meta.dirname, "..", "..", ".shots", `${name}.png`);
  await page.screenshot({ path, animations: "disabled" });
  return path;
}

function watch(page: Page, address: string): string[] {
  const found: string[] = [];
  page.on("console", (message) => {
    // Of what could not be loaded the text does not say what it was.
    const of = message.text().includes("status of") ? ` (${message.location().url})` : "";
    if (message.type() === "error") found.push(`console: ${message.text()}${of}`);
  });
  page.on("pageerror", (error) => found.push(`thrown: ${error.message}`));
  page.on("request", (request) => {
    if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url())) {
      found.push(`foreign request: ${request.url()}`);
    }
  });
  page.on("requestfailed", (request) => {
    const reason = request.failure()?.errorText ?? "failed";
    // The page itself called it off: it was left, reloaded or no longer wanted the answer.
    if (reason !== "net::ERR_ABORTED") found.push(`failed request: ${request.url()} (${reason})`);
  });
  page.on("response", (response) => {
    if (response.status() >= 400) found.push(`failed request: ${response.url()} (${response.status()})`);
  });
  return found;
}
