import { useStore } from "zustand";
import { type OfflineState, offline } from "./offline.ts";

/** Follows whether the page works without a network and whether an update waits. The selector must give a primitive. */
export function useOffline<T>(selector: (state: OfflineState) => T): T {
  return useStore(offline, selector);
}
