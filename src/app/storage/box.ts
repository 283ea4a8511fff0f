import { createStore, delMany, getMany, keys, setMany, type UseStore, update } from "idb-keyval";

/** Where the page keeps things in the browser: values that survive a structured clone, by key. All may reject. */
export interface Box {
  get(keys: readonly string[]): Promise<readonly unknown[]>;
  /** Puts all of them or none. */
  put(entries: readonly (readonly [string, unknown])[]): Promise<void>;
  /** Changes one value in one go, whatever other pages do. */
  update(key: string, change: (before: unknown) => unknown): Promise<void>;
  remove(keys: readonly string[]): Promise<void>;
  keys(): Promise<readonly string[]>;
}

/** IndexedDB, one database of our own. Rejects at every turn where the browser keeps nothing. */
export function indexedDbBox(name = "wellsweep"): Box {
  let opened: UseStore | null = null;
  const store = () => {
    opened ??= createStore(name, "board");
    return opened;
  };
  // In an async function, a browser without IndexedDB rejects as well instead of throwing.
  return {
    get: async (wanted) => getMany([...wanted], store()),
    put: async (entries) =>
      setMany(
        entries.map(([key, value]): [string, unknown] => [key, value]),
        store(),
      ),
    update: async (key, change) => update(key, change, store()),
    remove: async (unwanted) => delMany([...unwanted], store()),
    keys: async () => (await keys(store())).map(String),
  };
}
