import type { Page } from "playwright-core";

/** What a page holds on to after a collection of garbage, and what it has worked so far. */
export interface Held {
  readonly heapBytes: number;
  readonly nodes: number;
  readonly listeners: number;
  /** On the graphics card, as three.js counts them. */
  readonly geometries: number;
  readonly textures: number;
  readonly programs: number;
  /** All tasks of the main thread since it began. */
  readonly mainThreadSeconds: number;
}

/** What three.js counts of its renderer (`WebGLRenderer.info`). */
interface RendererInfo {
  readonly memory: { readonly geometries: number; readonly textures: number };
  readonly programs: readonly unknown[] | null;
}

/**
 * Gets a page ready to be looked at; call it before the page is opened. three.js tells an object of this name
 * of each renderer it makes, which is how the renderer of a built page can be found.
 * @returns a look at the page. It throws Error when the page has made no renderer.
 */
export async function heldBy(page: Page): Promise<() => Promise<Held>> {
  await page.addInitScript(() => {
    const heard = new EventTarget();
    const seen: { info: unknown }[] = [];
    heard.addEventListener("observe", (event) => {
      const made = (event as CustomEvent<{ isWebGLRenderer?: boolean; info: unknown }>).detail;
      if (made.isWebGLRenderer || made.info) seen.push(made);
    });
    Object.assign(globalThis, { __THREE_DEVTOOLS__: heard, renderersSeen: seen });
  });
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable");
  await session.send("HeapProfiler.enable");
  return async () => {
    await session.send("HeapProfiler.collectGarbage");
    const { metrics } = await session.send("Performance.getMetrics");
    const metric = (name: string): number => {
      const found = metrics.find((m) => m.name === name);
      if (found === undefined) throw new Error(`heldBy: the browser does not tell ${name}`);
      return found.value;
    };
    const renderer = await page.evaluate(() => {
      const seen = (globalThis as unknown as { renderersSeen: { info: RendererInfo }[] }).renderersSeen;
      return seen.map(({ info: { memory, programs } }) => ({
        geometries: memory.geometries,
        textures: memory.textures,
        programs: programs?.length ?? 0,
      }));
    });
    if (renderer.length === 0) throw new Error("heldBy: the page has made no renderer");
    const sum = (of: "geometries" | "textures" | "programs") => renderer.reduce((n, r) => n + r[of], 0);
    return {
      heapBytes: metric("JSHeapUsedSize"),
      nodes: metric("Nodes"),
      listeners: metric("JSEventListeners"),
      geometries: sum("geometries"),
      textures: sum("textures"),
      programs: sum("programs"),
      mainThreadSeconds: metric("TaskDuration"),
    };
  };
}
