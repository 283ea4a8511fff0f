import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { fetchAndStart, startAndDraw } from "../../../src/app/build/unbuilt/fetchAndStart.ts";
import { workbench } from "../../../src/app/state/workbench.ts";
import { valueAt } from "../../../src/setup/types/keyPath.ts";
import { exampleText } from "../exampleText.ts";

const before = workbench.getState();
const isBuilt = () => valueAt(workbench.getState().document, ["build"]) !== undefined;

/** A page at a station. @returns the places it is taken to */
function pageAt(hash: string): readonly string[] {
  const sought: string[] = [];
  vi.stubGlobal("location", { hash });
  vi.stubGlobal("history", { pushState: (_: unknown, __: string, to: string) => sought.push(to) });
  const querySelector = (selector: string) => {
    sought.push(selector);
    return null;
  };
  vi.stubGlobal("document", { querySelector });
  let frames = 0;
  vi.stubGlobal("requestAnimationFrame", (run: () => void) => {
    if (++frames === 1) run();
    return frames;
  });
  return sought;
}

beforeEach(() => workbench.getState().openText(exampleText, "test.json"));
afterEach(() => {
  vi.unstubAllGlobals();
  workbench.setState(before, true);
});

describe("a usual knuckle that is fetched", () => {
  it("is put into the truck it was asked for, and leads to its drawings", async () => {
    const sought = pageAt("#build");
    expect(isBuilt()).toBe(false);
    await startAndDraw();
    expect(isBuilt()).toBe(true);
    expect(sought).toContain("[data-fold='drawings'] > summary");
  });

  it("takes nobody back who has gone to another station meanwhile", async () => {
    const sought = pageAt("#clear");
    await startAndDraw();
    expect(isBuilt()).toBe(true);
    expect(sought).toEqual([]);
  });

  it("is not put into another truck, nor leads anywhere there", async () => {
    const sought = pageAt("#build");
    const done = startAndDraw();
    workbench.getState().openText(exampleText, "other.json");
    await done;
    expect(isBuilt()).toBe(false);
    expect(sought).toEqual([]);
  });

  it("is not put into another variant of the truck", async () => {
    const done = fetchAndStart();
    workbench.getState().chooseVariant("narrow");
    expect(await done).toBe(false);
    expect(isBuilt()).toBe(false);
  });
});
