import type { Workbench } from "./workbenchActions.ts";
import type { WorkbenchStore } from "./workbenchStore.ts";

/** What of a store a page draws by. */
export type PacedStore = Pick<WorkbenchStore, "getState" | "getInitialState" | "subscribe">;

/**
 * A store as a page can follow it: a pose that is only moved is told once a frame, however many keys move it in between, and
 * all else at once, the pose with it. What it gives has at all times been one state of the store.
 * @param onFrame calls back before the next frame
 */
export function pacedStore(store: WorkbenchStore, onFrame: (tell: () => void) => void): PacedStore {
  let told = store.getState();
  let isAwaited = false;
  const listeners = new Set<Parameters<PacedStore["subscribe"]>[0]>();
  const tell = () => {
    const before = told;
    told = store.getState();
    if (told !== before) for (const listener of listeners) listener(told, before);
  };
  store.subscribe((now) => {
    if (!isOnlyMoved(now, told)) tell();
    if (now === told || isAwaited) return;
    isAwaited = true;
    onFrame(() => {
      isAwaited = false;
      tell();
    });
  });
  return {
    getState: () => told,
    getInitialState: store.getInitialState,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

function isOnlyMoved(now: Workbench, before: Workbench): boolean {
  if (now.travel === before.travel && now.steer === before.steer) return false;
  return Object.entries(now).every(
    ([key, value]) => key === "travel" || key === "steer" || Object.is(value, before[key as keyof Workbench]),
  );
}
