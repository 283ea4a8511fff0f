import { afterEach, describe, expect, it, vi } from "vitest";
import { openSharedLink } from "../../../../src/app/shell/share/openSharedLink.ts";
import { isPackingReady } from "../../../../src/app/shell/share/packedText.ts";
import { isShareLink, readShareLink, shareLink } from "../../../../src/app/shell/share/shareLink.ts";
import { createWorkbenchStore } from "../../../../src/app/state/workbenchStore.ts";
import { exampleDocument, exampleText } from "../../exampleText.ts";

afterEach(() => {
  vi.useRealTimers();
});

async function linkHash(name: string): Promise<string> {
  const document = { ...exampleDocument, name };
  const link = await shareLink({ document, file: "f.json" }, "https://example.org/#measure", new Set());
  if (!link.ok) throw new Error(link.mend);
  return new URL(link.url).hash;
}

describe("a link whose reader the network keeps back", () => {
  it("stays in the address with its reason told, the board as it was, and opens once the reader is there", async () => {
    const store = createWorkbenchStore(exampleText, "test.json");
    const hash = await linkHash("Truck from a link");
    const before = store.getState().document;
    const unread = (text: string) => readShareLink(text, async () => false);
    expect(await openSharedLink(store, hash, unread)).toBeNull();
    expect(store.getState().document).toBe(before);
    expect(store.getState().refusal?.issues[0]?.mend).toMatch(/could not be fetched; the link stays/);

    // One that was left meanwhile takes nobody's work off the board.
    expect(await openSharedLink(store, hash, undefined, () => false)).toBeNull();
    expect(store.getState().document).toBe(before);

    expect(await openSharedLink(store, hash)).toEqual({ station: "measure", layer: null });
    expect(store.getState().truck?.setup.name).toBe("Truck from a link");
    expect(store.getState().refusal).toBeNull();
  });

  it("is waited for no longer than a moment, where the network never answers", async () => {
    vi.useFakeTimers();
    const answer = isPackingReady(new Promise(() => {}));
    await vi.advanceTimersByTimeAsync(15_000);
    expect(await answer).toBe(false);
    expect(await isPackingReady(Promise.reject(new Error("offline")))).toBe(false);
    expect(await isPackingReady(Promise.resolve())).toBe(true);
    expect(vi.getTimerCount()).toBe(0);
  });

  it("is told from any other hash by its beginning; one that is refused for good leaves the address", async () => {
    expect(["#setup=2.AB", "setup=1.ab", "#setup=9.x"].map(isShareLink)).toEqual([true, true, true]);
    expect(["", "#clear", "#show/counter"].map(isShareLink)).toEqual([false, false, false]);
    const store = createWorkbenchStore(exampleText, "test.json");
    expect(await openSharedLink(store, "#setup=1.abc")).toEqual({ station: "clear", layer: null });
  });
});
