import type { KeptPoint } from "../../state/keptPoints.ts";
import { readPreferences } from "../../state/preferences.ts";
import { newDocumentId } from "../../state/typedDocument.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import type { KeyValueStore } from "./keyValueStore.ts";
import type { LastWords } from "./lastWords.ts";
import {
  draftsOf,
  LAST_KEY,
  meshesOf,
  meshKey,
  PREFERENCES_KEY,
  RECENTS_KEY,
  type RecentSetup,
  readRecents,
  readRecord,
  recordKey,
  type SetupRecord,
} from "./records.ts";
import { putStepsBack, readSteps, type StoredSteps, stepsKey } from "./storedSteps.ts";

/** Told of the points of a setup that have a name, before it is on the board. */
export type GivePoints = (documentId: string, points: readonly KeptPoint[]) => void;

/** Takes a setup for this page; false = another page has it on its board. */
export type Claim = (documentId: string) => Promise<boolean>;

/**
 * Puts what was worked on last back on the board, as it was left: document, drafts, pose, variant, view, and
 * the steps that can be undone. What is stored may be anything; what cannot be read is passed over. It is no step itself.
 * @param preferredId the setup this very page had, if it was here before; else the last of any page
 * @returns the list of setups worked on before, newest first
 */
export async function restoreWork(
  store: WorkbenchStore,
  box: KeyValueStore,
  lastWords: LastWords,
  claim: Claim,
  givePoints: GivePoints,
  preferredId: string | null,
): Promise<readonly RecentSetup[]> {
  const [recents, last, preferences] = await box.get([RECENTS_KEY, LAST_KEY, PREFERENCES_KEY]);
  if (preferences !== undefined) store.getState().setPreferences(readPreferences(preferences));
  const said = saidRecords(lastWords);
  const id = preferredId ?? said[0]?.documentId ?? (typeof last === "string" ? last : null);
  if (id !== null) {
    const record = await newestRecord(box, said, id);
    if (record) {
      const steps = await putOnBoard(store, box, record, claim, givePoints);
      store.temporal.getState().clear();
      if (steps) putStepsBack(store, steps);
    }
  }
  return readRecents(recents);
}

/**
 * Puts a setup worked on before on the board; the one there goes to the list, and undo brings it back.
 * @returns false when it cannot be found or read
 */
export async function reopenSetup(
  store: WorkbenchStore,
  box: KeyValueStore,
  lastWords: LastWords,
  claim: Claim,
  givePoints: GivePoints,
  documentId: string,
): Promise<boolean> {
  const record = await newestRecord(box, saidRecords(lastWords), documentId);
  if (!record) return false;
  if (store.getState().documentId !== documentId) await putOnBoard(store, box, record, claim, givePoints);
  return true;
}

/** What was said and not cleared, newest first: it is newer than what the box holds. */
function saidRecords(lastWords: LastWords): readonly SetupRecord[] {
  return lastWords
    .hear()
    .map(readRecord)
    .filter((record) => record !== null);
}

async function newestRecord(
  box: KeyValueStore,
  said: readonly SetupRecord[],
  documentId: string,
): Promise<SetupRecord | null> {
  const noted = said.find((record) => record.documentId === documentId);
  if (noted) return noted;
  const [stored] = await box.get([recordKey(documentId)]);
  return readRecord(stored);
}

/** @returns the steps kept of it */
async function putOnBoard(
  store: WorkbenchStore,
  box: KeyValueStore,
  record: SetupRecord,
  claim: Claim,
  givePoints: GivePoints,
): Promise<StoredSteps | null> {
  const { document, file, variant, travel, steer, hiddenParts, isAligned, isSaved, meshNames } = record;
  const meshes = meshesOf(
    meshNames,
    await box.get(meshNames.map((name) => meshKey(record.documentId, name))),
  );
  const [stored] = await box.get([stepsKey(record.documentId)]);
  const steps = readSteps(stored);
  // On two boards at once, each would write over the other: this one gets a copy.
  const documentId = (await claim(record.documentId)) ? record.documentId : newDocumentId();
  if (steps) givePoints(documentId, steps.points);
  store.getState().openDocument({
    documentId,
    document,
    file,
    meshes,
    variant,
    drafts: draftsOf(record),
    travel,
    steer,
    hiddenParts,
    isAligned,
    isSaved,
  });
  const { typed } = record;
  if (typed?.isOptional && typed.text.trim() === "") store.getState().removeField(typed.path);
  else if (typed) store.getState().editField(typed.path, typed.text);
  if (store.getState().view !== record.view) store.getState().setView(record.view);
  return steps;
}
