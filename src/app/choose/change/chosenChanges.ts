import { createStore } from "zustand/vanilla";
import { isSameJson } from "../../../setup/editing/writtenValues.ts";
import type { ChangeReport } from "../../../studies/change/changeTypes.ts";
import type { ChangeSpeech } from "../../../studies/wording/changeWords.ts";
import { indexedDbStore, type KeyValueStore } from "../../shell/storage/keyValueStore.ts";

/** A variant that was picked from a list of changes: the list, how it is told, of what it was, and what was picked of it. */
export interface ChosenChange {
  readonly documentId: string;
  /** The variant that was made. */
  readonly variant: string;
  /** What that was when it was made, as typed; changed since, it is no longer what was picked. */
  readonly document: unknown;
  /** The variant that the list was worked out for; null = the setup without one. */
  readonly of: string | null;
  readonly report: ChangeReport;
  /** Told in whatever units are shown. */
  readonly speech: Omit<ChangeSpeech, "format">;
  /** Its place among the report's changes. */
  readonly at: number;
}

/** Where they are kept; another number for lists that are built otherwise. */
const KEY = "chosen-changes.2";
/** The oldest go first. */
const MOST = 40;

/** Notes where variants come from, and keeps it in a box. Where the browser keeps nothing it lasts as long as the page. */
export function chosenChangesIn(box: KeyValueStore) {
  const store = createStore<{ readonly all: readonly ChosenChange[] }>()(() => ({ all: [] }));
  let writing: Promise<void> = box.get([KEY]).then(
    ([kept]) => store.setState(({ all }) => ({ all: merged(kept, all) })),
    () => {},
  );
  return {
    store,
    /** Settles when what was kept is read and all noted so far is written, or cannot be. */
    written: () => writing,
    note(one: ChosenChange): void {
      store.setState(({ all }) => ({ all: merged(all, [one]) }));
      writing = writing.then(() => box.update(KEY, (before) => merged(before, [one]))).catch(() => {});
    },
    /** What a variant of a document was picked from; null = it was made otherwise, or changed since. @param document as typed */
    of(documentId: string, variant: string | null, document: unknown): ChosenChange | null {
      const found = store.getState().all.find((one) => isOf(one, { documentId, variant }));
      return found && isSameJson(found.document, document) ? found : null;
    },
  };
}

export const chosenChanges = chosenChangesIn(indexedDbStore());

/** Those kept, which may be anything, and newer ones in place of theirs. */
function merged(kept: unknown, newer: readonly ChosenChange[]): readonly ChosenChange[] {
  const old = (Array.isArray(kept) ? kept : []) as readonly ChosenChange[];
  return [...old.filter((one) => !newer.some((other) => isOf(one, other))), ...newer].slice(-MOST);
}

function isOf(one: ChosenChange, other: { readonly documentId: string; readonly variant: string | null }) {
  return one.documentId === other.documentId && one.variant === other.variant;
}
