import type { Workbench } from "../state/actionContext.ts";
import type { TypedDocument } from "../state/typedDocument.ts";
import type { WorkbenchStore } from "../state/workbenchStore.ts";
import type { Box } from "./box.ts";
import type { LastWords } from "./lastWords.ts";
import {
  LAST_KEY,
  loadedMeshes,
  meshKey,
  PREFERENCES_KEY,
  RECENTS_KEY,
  type RecentSetup,
  readRecents,
  recentOf,
  recordKey,
  recordOf,
  type SetupRecord,
} from "./records.ts";

/** Setups kept; the one worked on longest ago goes. */
const MAX_RECENTS = 50;

export interface KeepOptions {
  /** ms from a change until it is written, in which more changes join it. */
  readonly delay: number;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Takes what cannot be written in time when the page goes. */
  readonly lastWords: LastWords;
  /** A document that is no work of anybody's and is not listed: the example as it came. */
  readonly example: TypedDocument | null;
  /** Told after each writing: the list as it is then, or what went wrong. */
  readonly onWritten: (recents: readonly RecentSetup[]) => void;
  readonly onTrouble: (error: unknown) => void;
}

export interface WorkKeeper {
  /** Writes what is not written yet. Never rejects. */
  flush(): Promise<void>;
  /** Writes what is not written yet as well as a page that goes can. */
  leave(): void;
  stop(): void;
}

/** Keeps what is on the board, and every setup that was, in the browser: a moment after each change. */
export function keepWork(store: WorkbenchStore, box: Box, options: KeepOptions): WorkKeeper {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pending: Workbench | null = null;
  /** The last state that is not in the storage yet, waiting or on its way there. */
  let unwritten: Workbench | null = null;
  /** One writing after the other, so that an older one never ends last. */
  let writing: Promise<void> = Promise.resolve();
  const writtenMeshes = new Map<string, object>();
  let lastListed: { readonly documentId: string; readonly document: TypedDocument } | null = null;

  const write = async (state: Workbench): Promise<void> => {
    const record = recordFrom(state);
    if (!record) return;
    const { documentId, document } = record;
    const meshes = loadedMeshes(state.meshes)
      .map(([name, mesh]) => [meshKey(documentId, name), mesh] as const)
      .filter(([key, mesh]) => writtenMeshes.get(key) !== mesh);
    await box.put([
      ...meshes,
      [recordKey(documentId), record],
      [LAST_KEY, documentId],
      [PREFERENCES_KEY, state.preferences],
    ]);
    for (const [key, mesh] of meshes) writtenMeshes.set(key, mesh);
    const isListed = lastListed?.documentId === documentId && lastListed.document === document;
    if (isListed || document === options.example) return;
    lastListed = { documentId, document };
    options.onWritten(await list(box, recentOf(record, options.now())));
  };
  const writePending = () => {
    clearTimeout(timer);
    timer = undefined;
    const state = pending;
    pending = null;
    if (!state) return;
    writing = writing
      .then(() => write(state))
      .then(() => {
        // Words about something newer stay until that is written too.
        if (unwritten !== state) return;
        unwritten = null;
        options.lastWords.clear();
      })
      .catch(options.onTrouble);
  };
  const stopFollowing = store.subscribe((state, before) => {
    if (!differs(state, before)) return;
    // Another setup comes to the board: what was done to the one before must not wait, or it would be passed over.
    if (pending && pending.documentId !== state.documentId) writePending();
    pending = state;
    unwritten = state;
    timer ??= setTimeout(writePending, options.delay);
  });
  return {
    flush() {
      writePending();
      return writing;
    },
    leave() {
      const record = unwritten && recordFrom(unwritten);
      if (record) options.lastWords.say(record);
      writePending();
    },
    stop() {
      stopFollowing();
      clearTimeout(timer);
    },
  };
}

function recordFrom(state: Workbench): SetupRecord | null {
  return recordOf(state, state.saved[state.documentId] === state.document);
}

/** Whether anything that is kept differs. */
function differs(a: Workbench, b: Workbench): boolean {
  return (
    a.document !== b.document ||
    a.documentId !== b.documentId ||
    a.file !== b.file ||
    a.variant !== b.variant ||
    a.drafts !== b.drafts ||
    a.meshes !== b.meshes ||
    a.travel !== b.travel ||
    a.steer !== b.steer ||
    a.view !== b.view ||
    a.hiddenParts !== b.hiddenParts ||
    a.isAligned !== b.isAligned ||
    a.preferences !== b.preferences ||
    a.saved !== b.saved
  );
}

/** Puts a line on top of the list, and drops what falls off its end. */
async function list(box: Box, line: RecentSetup): Promise<readonly RecentSetup[]> {
  let kept: readonly RecentSetup[] = [];
  let dropped: readonly RecentSetup[] = [];
  await box.update(RECENTS_KEY, (stored) => {
    const others = readRecents(stored).filter(({ documentId }) => documentId !== line.documentId);
    const all = [line, ...others];
    kept = all.slice(0, MAX_RECENTS);
    dropped = all.slice(MAX_RECENTS);
    return kept;
  });
  if (dropped.length > 0)
    await removeRecords(
      box,
      dropped.map(({ documentId }) => documentId),
    );
  return kept;
}

/** Removes setups with their mesh files. */
export async function removeRecords(box: Box, documentIds: readonly string[]): Promise<void> {
  const all = await box.keys();
  const unwanted = documentIds.flatMap((id) => [
    recordKey(id),
    ...all.filter((key) => key.startsWith(meshKey(id, ""))),
  ]);
  await box.remove(unwanted);
}
