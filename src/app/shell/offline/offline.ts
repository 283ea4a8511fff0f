import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { flushStorage } from "../storage/pageStorage.ts";

interface OfflineState {
  /** `ready`: the page works without a network; `off`: this browser or this address cannot keep it. */
  readonly status: "starting" | "ready" | "off";
  /** A newer build is there and waits for `applyUpdate`. */
  readonly updateReady: boolean;
}

/** What a panel may show of working without a network. */
const offline = createStore<OfflineState>()(() => ({ status: "starting", updateReady: false }));

let waiting: ServiceWorker | null = null;

/** Has the page kept for use without a network, and looks for newer builds. Never rejects. */
export async function startOffline(): Promise<void> {
  // While developing, a kept page would hide every change.
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) {
    offline.setState({ status: "off" });
    return;
  }
  try {
    const registration = await navigator.serviceWorker.register("./service-worker.js");
    announce(registration.waiting);
    registration.addEventListener("updatefound", () => {
      const { installing } = registration;
      installing?.addEventListener("statechange", () => {
        if (installing.state === "installed") announce(registration.waiting);
      });
    });
    await navigator.serviceWorker.ready;
    offline.setState({ status: "ready" });
  } catch {
    offline.setState({ status: "off" });
  }
}

/** A worker that waits is an update where another is at work already; the first one is at work by itself. */
function announce(worker: ServiceWorker | null): void {
  if (!worker || !navigator.serviceWorker.controller) return;
  waiting = worker;
  offline.setState({ updateReady: true });
}

/** Loads the newer build, with all that is on the board written first. Nothing where there is none. */
export async function applyUpdate(): Promise<void> {
  if (!waiting) return;
  await flushStorage();
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting.postMessage("apply-update");
}

/** Follows whether the page works without a network and whether an update waits. The selector must give a primitive. */
export function useOffline<T>(selector: (state: OfflineState) => T): T {
  return useStore(offline, selector);
}
