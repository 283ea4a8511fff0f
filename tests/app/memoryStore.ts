import type { KeyValueStore } from "../../src/app/shell/storage/keyValueStore.ts";
import { cachedJson, type LastWords } from "../../src/app/shell/storage/lastWords.ts";

/** A box that forgets when the test ends; values go through a structured clone, as in the browser. */
export function memoryStore(): KeyValueStore & { readonly held: Map<string, unknown>; writes: number } {
  const held = new Map<string, unknown>();
  return {
    held,
    writes: 0,
    async get(keys) {
      return keys.map((key) => structuredClone(held.get(key)));
    },
    async put(entries) {
      this.writes += 1;
      for (const [key, value] of entries) held.set(key, structuredClone(value));
    },
    putNow(entries, onSettled) {
      for (const [key, value] of entries) held.set(key, structuredClone(value));
      queueMicrotask(onSettled);
      return true;
    },
    async update(key, change) {
      held.set(key, structuredClone(change(structuredClone(held.get(key)))));
    },
    async remove(keys) {
      for (const key of keys) held.delete(key);
    },
    async keys() {
      return [...held.keys()];
    },
  };
}

/** Last words that are remembered as text, as in local storage. */
export function memoryLastWords(): LastWords {
  const texts = new Map<string, string>();
  return {
    say: (documentId, value) => {
      texts.delete(documentId);
      texts.set(documentId, cachedJson(value));
    },
    hear: () => [...texts.values()].reverse().map((text): unknown => JSON.parse(text)),
    clear: (documentId) => void texts.delete(documentId),
  };
}
