import type { KeptPoint } from "../../state/keptPoints.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { typing } from "../../state/typing.ts";
import type { Workbench } from "../../state/workbenchActions.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import type { KeyValueStore } from "./keyValueStore.ts";
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
import { stepsKey, storedSteps } from "./storedSteps.ts";

/** Writings that were begun at once and may be on their way together; what comes meanwhile waits for one to arrive. */
const MAX_UNDER_WAY = 4;

/** Setups kept; the one worked on longest ago goes. */
const MAX_RECENTS = 50;

export interface KeepOptions {
  /** ms from a change until it is written, in which more changes join it. */
  readonly delay: number;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** Takes each change at once. */
  readonly lastWords: LastWords;
  /** A document that is no work of anybody's and is not listed: the example as it came. */
  readonly example: TypedDocument | null;
  /** The points of a setup that have a name. */
  readonly pointsOf: (documentId: string) => readonly KeptPoint[];
  /** Told after each writing: the list as it is then, or what went wrong. */
  readonly onWritten: (recents: readonly RecentSetup[]) => void;
  readonly onTrouble: (error: unknown) => void;
}

export interface WorkKeeper {
  /** Writes what is not written yet. Never rejects. */
  flush(): Promise<void>;
  /** Has what is on the board written, though nothing was changed. */
  touch(): void;
  stop(): void;
}

/**
 * Keeps what is on the board, and every setup that was, in the browser. Each change is noted before whoever made it goes on,
 * and its writing begins at once; the rest (mesh files, the list of setups, preferences) follows a moment later, for many
 * changes together.
 */
export function keepWork(store: WorkbenchStore, box: KeyValueStore, options: KeepOptions): WorkKeeper {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pending: Workbench | null = null;
  /** The last state that is not in the storage yet, waiting or on its way there. */
  let unwritten: Workbench | null = null;
  /** One writing after the other, so that an older one never ends last. */
  let writing: Promise<void> = Promise.resolve();
  const writtenMeshes = new Map<string, object>();
  let lastListed: { readonly documentId: string; readonly document: TypedDocument } | null = null;

  let underWay = 0;
  let isWaiting = false;
  /** Begins to write the newest state, where nothing but its record is missing in the box. */
  const writeNow = () => {
    const record = unwritten && recordFrom(unwritten);
    if (!record) return;
    isWaiting = underWay >= MAX_UNDER_WAY;
    if (isWaiting) return;
    const { documentId, meshNames } = record;
    if (!meshNames.every((name) => writtenMeshes.has(meshKey(documentId, name)))) return;
    const isGoing = box.putNow(
      [
        [recordKey(documentId), record],
        [LAST_KEY, documentId],
      ],
      () => {
        underWay -= 1;
        if (isWaiting) writeNow();
      },
    );
    if (isGoing) underWay += 1;
  };

  let lastSteps: readonly unknown[] = [];
  /** The steps and points of the setup on the board, where they are not in the box as they are. */
  const stepsToWrite = (documentId: string): readonly (readonly [string, unknown])[] => {
    const points = options.pointsOf(documentId);
    const { pastStates, futureStates } = store.temporal.getState();
    const now = [documentId, pastStates, futureStates, points];
    if (store.getState().documentId !== documentId || now.every((one, i) => one === lastSteps[i])) return [];
    lastSteps = now;
    const steps = storedSteps(store, points);
    return steps ? [[stepsKey(documentId), steps]] : [];
  };

  const write = async (asked: Workbench): Promise<void> => {
    // What was done since is begun to be written already, and must not be written over.
    const state = unwritten?.documentId === asked.documentId ? unwritten : asked;
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
      ...stepsToWrite(documentId),
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
    let typed = typing.getState().typed;
    writing = writing
      .then(() => {
        typed = typing.getState().typed;
        return write(state);
      })
      .then(() => {
        // Words about something newer stay until that is written too.
        if (unwritten !== state || typing.getState().typed !== typed) return;
        unwritten = null;
        options.lastWords.clear(state.documentId);
      })
      .catch(options.onTrouble);
  };
  const take = (state: Workbench, isTyped: boolean) => {
    // Another setup comes to the board: what was done to the one before must not wait, or it would be passed over.
    if (pending && pending.documentId !== state.documentId) writePending();
    pending = state;
    unwritten = state;
    const record = recordFrom(state);
    if (record) options.lastWords.say(record.documentId, record);
    if (isTyped) writeNow();
    timer ??= setTimeout(writePending, options.delay);
  };
  const stopTyping = typing.subscribe(() => take(store.getState(), true));
  const stopFollowing = store.subscribe((state, before) => {
    if (!differs(state, before)) return;
    take(state, state.document !== before.document || state.drafts !== before.drafts);
  });
  return {
    flush() {
      writePending();
      return writing;
    },
    touch: () => take(store.getState(), true),
    stop() {
      stopTyping();
      stopFollowing();
      clearTimeout(timer);
    },
  };
}

function recordFrom(state: Workbench): SetupRecord | null {
  return recordOf(state, state.saved[state.documentId] === state.document, typing.getState().typed);
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
async function list(box: KeyValueStore, line: RecentSetup): Promise<readonly RecentSetup[]> {
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
export async function removeRecords(box: KeyValueStore, documentIds: readonly string[]): Promise<void> {
  const all = await box.keys();
  const unwanted = documentIds.flatMap((id) => [
    recordKey(id),
    stepsKey(id),
    ...all.filter((key) => key.startsWith(meshKey(id, ""))),
  ]);
  await box.remove(unwanted);
}
