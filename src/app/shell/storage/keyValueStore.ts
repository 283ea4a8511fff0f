import { createStore, delMany, getMany, keys, setMany, type UseStore, update } from "idb-keyval";

/** Where the page keeps things in the browser: values that survive a structured clone, by key. All may reject. */
export interface KeyValueStore {
  get(keys: readonly string[]): Promise<readonly unknown[]>;
  /** Puts all of them or none. */
  put(entries: readonly (readonly [string, unknown])[]): Promise<void>;
  /**
   * Starts to put all of them or none, with all that the page has to do for it done when this returns: they arrive even
   * where the page ends right after, and are on the disk itself when `onSettled` is told.
   * @returns false when the box is not open yet; then nothing is put
   */
  putNow(entries: readonly (readonly [string, unknown])[], onSettled: () => void): boolean;
  /** Changes one value in one go, whatever other pages do. */
  update(key: string, change: (before: unknown) => unknown): Promise<void>;
  remove(keys: readonly string[]): Promise<void>;
  keys(): Promise<readonly string[]>;
}

/** IndexedDB, one database of our own. Rejects at every turn where the browser keeps nothing. */
export function indexedDbStore(name = "wellsweep"): KeyValueStore {
  const STORE = "board";
  let opened: UseStore | null = null;
  /** The open database itself, once something has been asked of it. */
  let database: IDBDatabase | null = null;
  const store = (): UseStore => {
    opened ??= createStore(name, STORE);
    const use = opened;
    return (mode, act) =>
      use(mode, (objects) => {
        database = objects.transaction.db;
        return act(objects);
      });
  };
  // In an async function, a browser without IndexedDB rejects as well instead of throwing.
  return {
    get: async (wanted) => getMany([...wanted], store()),
    put: async (entries) =>
      setMany(
        entries.map(([key, value]): [string, unknown] => [key, value]),
        store(),
      ),
    putNow(entries, onSettled) {
      if (database === null) return false;
      try {
        const going = database.transaction(STORE, "readwrite", { durability: "strict" });
        going.oncomplete = going.onabort = onSettled;
        for (const [key, value] of entries) going.objectStore(STORE).put(value, key);
        // Otherwise the page would have to come back to it once more, and it may be busy, or gone.
        going.commit();
        return true;
      } catch {
        database = null; // closed by the browser; the next use opens it again
        return false;
      }
    },
    update: async (key, change) => update(key, change, store()),
    remove: async (unwanted) => delMany([...unwanted], store()),
    keys: async () => (await keys(store())).map(String),
  };
}
