import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import { keptPoints, pointsOf, setPoints } from "../../state/keptPoints.ts";
import { workbench } from "../../state/workbench.ts";
import { keepWork, removeRecords, type WorkKeeper } from "./keepWork.ts";
import { indexedDbStore } from "./keyValueStore.ts";
import { localLastWords } from "./lastWords.ts";
import { RECENTS_KEY, type RecentSetup, readRecents } from "./records.ts";
import { type Claim, reopenSetup, restoreWork } from "./restoreWork.ts";

interface StorageState {
  /** `off`: the browser keeps nothing (a private window, storage switched off or full); all else works. */
  readonly status: "starting" | "kept" | "off";
  /** Setups worked on before, newest first; the one on the board among them. */
  readonly recents: readonly RecentSetup[];
}

/** What a panel may show of the storage. */
const storage = createStore<StorageState>()(() => ({ status: "starting", recents: [] }));

/** ms. For what is not written at once. */
const WRITE_DELAY = 300;

/** ms. A storage that takes longer to answer must not keep the page from showing; a busy machine may take seconds. */
const MAX_WAIT = 8000;

const TAB_KEY = "wellsweep-tab";
const box = indexedDbStore();
const lastWords = localLastWords();
let keeper: WorkKeeper | null = null;

/** Puts back what was worked on last, then keeps what is done. Never rejects, and takes at most a moment. */
export async function startStorage(): Promise<void> {
  const example = workbench.getState().document;
  let isLate = false;
  const restored = restoreWork(
    lateGuard(() => isLate),
    box,
    lastWords,
    claim,
    setPoints,
    tabSetup.get(),
  ).then(
    (recents) => {
      storage.setState({ status: "kept", recents });
    },
    () => storage.setState({ status: "off" }),
  );
  await Promise.race([restored, new Promise((done) => setTimeout(done, MAX_WAIT))]);
  isLate = true;
  keeper = keepWork(workbench, box, {
    delay: WRITE_DELAY,
    now: Date.now,
    lastWords,
    example,
    pointsOf,
    onWritten: (recents) => storage.setState({ status: "kept", recents }),
    onTrouble: () => storage.setState({ status: "off" }),
  });
  const { documentId } = workbench.getState();
  tabSetup.set(documentId);
  void claim(documentId);
  workbench.subscribe((state, before) => {
    if (state.documentId === before.documentId) return;
    tabSetup.set(state.documentId);
    void claim(state.documentId);
  });
  // What was noted as the page ended is in the box from now on, and in the list.
  if (workbench.getState().document !== example) keeper.touch();
  keptPoints.subscribe(() => keeper?.touch());
  addEventListener("pagehide", () => void keeper?.flush());
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void keeper?.flush();
  });
}

/** The store, until it is too late to put anything on the board: the person may have begun to work. */
function lateGuard(isLate: () => boolean): typeof workbench {
  return {
    ...workbench,
    getState() {
      if (isLate()) throw new Error("storage: the answer came too late to be shown");
      return workbench.getState();
    },
  };
}

/** Writes what is not written yet: before the page is replaced. */
export async function flushStorage(): Promise<void> {
  await keeper?.flush();
}

/** Puts a setup of the list on the board. @returns false when it cannot be found or read */
export async function reopenRecent(documentId: string): Promise<boolean> {
  await flushStorage();
  return reopenSetup(workbench, box, lastWords, claim, setPoints, documentId).catch(() => false);
}

/** Takes a setup off the list, for good. */
export async function forgetRecent(documentId: string): Promise<void> {
  let recents: readonly RecentSetup[] = storage.getState().recents;
  await box.update(RECENTS_KEY, (stored) => {
    recents = readRecents(stored).filter((line) => line.documentId !== documentId);
    return recents;
  });
  await removeRecords(box, [documentId]);
  lastWords.clear(documentId);
  storage.setState({ recents });
}

/** Which setup this tab had on its board: survives a reload, and is no other tab's. */
const tabSetup = {
  get(): string | null {
    try {
      return sessionStorage.getItem(TAB_KEY);
    } catch {
      return null;
    }
  },
  set(documentId: string): void {
    try {
      sessionStorage.setItem(TAB_KEY, documentId);
    } catch {
      // Then the last setup of any tab comes back.
    }
  },
};

/** Setups this page has taken; held until it goes. */
const claimed = new Set<string>();
const claim: Claim = async (documentId) => {
  if (claimed.has(documentId) || !("locks" in navigator)) return true;
  // A page that is reloaded may not have let go of its setup yet.
  for (let tries = 0; tries < 4; tries++) {
    if (await claimNow(documentId)) {
      claimed.add(documentId);
      return true;
    }
    await new Promise((done) => setTimeout(done, 50));
  }
  return false;
};

function claimNow(documentId: string): Promise<boolean> {
  return new Promise((answer) => {
    navigator.locks
      .request(`wellsweep-setup:${documentId}`, { ifAvailable: true }, (lock) => {
        answer(lock !== null);
        // Held as long as the page lives.
        return lock === null ? undefined : new Promise<void>(() => {});
      })
      .catch(() => answer(true));
  });
}

/** Follows what the browser keeps. The selector must give a primitive or something that already existed. */
export function useStorage<T>(selector: (state: StorageState) => T): T {
  return useStore(storage, selector);
}
