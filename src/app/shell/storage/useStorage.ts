import { useStore } from "zustand";
import { type StorageState, storage } from "./pageStorage.ts";

/** Follows what the browser keeps. The selector must give a primitive or something that already existed. */
export function useStorage<T>(selector: (state: StorageState) => T): T {
  return useStore(storage, selector);
}
