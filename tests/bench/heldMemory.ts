import type { CDPSession, Page } from "playwright-core";
import { metricsOf, startCounting, type Worked, workedOf } from "./mainThread.ts";

/** What a page holds on to after a collection of garbage, and what it has worked so far. */
export interface Held extends Worked {
  readonly heapBytes: number;
  /** Everything that inherits from Object: functions, arrays, maps and React's own too. */
  readonly objects: number;
  readonly nodes: number;
  readonly listeners: number;
  /** On the graphics card, as three.js counts them. */
  readonly geometries: number;
  readonly textures: number;
  readonly programs: number;
}

/** Between two collections of garbage: frames asked for are drawn. */
const SETTLE_MS = 100;

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
  await startCounting(session);
  await session.send("HeapProfiler.enable");
  return async () => {
    // What a first collection sets free to be cleared up (weak references) goes with the next.
    for (let i = 0; i < 3; i++) {
      await page.waitForTimeout(SETTLE_MS);
      await session.send("HeapProfiler.collectGarbage");
    }
    const objects = await objectsOf(session);
    const metric = await metricsOf(session);
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
      objects,
      nodes: metric("Nodes"),
      listeners: metric("JSEventListeners"),
      geometries: sum("geometries"),
      textures: sum("textures"),
      programs: sum("programs"),
      ...workedOf(metric),
    };
  };
}

async function objectsOf(session: CDPSession): Promise<number> {
  const objectGroup = "heldBy";
  const prototype = await session.send("Runtime.evaluate", { expression: "Object.prototype", objectGroup });
  const { objects } = await session.send("Runtime.queryObjects", {
    prototypeObjectId: prototype.result.objectId!,
    objectGroup,
  });
  const count = await session.send("Runtime.callFunctionOn", {
    objectId: objects.objectId!,
    functionDeclaration: "function () { return this.length; }",
    returnByValue: true,
  });
  await session.send("Runtime.releaseObjectGroup", { objectGroup });
  return count.result.value as number;
}
