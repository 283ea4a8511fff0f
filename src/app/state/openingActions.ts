import { newTruckDocument } from "../../setup/newTruck.ts";
import { readSetup } from "../../setup/readSetup.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import { unitGuesses } from "../../studies/worksheet/scanMove.ts";
import { freeName } from "./freeName.ts";
import { GivenMeshes, meshNamesIn } from "./givenMeshes.ts";
import { shownDocument } from "./selectors.ts";
import { trucks } from "./truck.ts";
import { type DocumentSlice, newDocumentId, type TypedDocument } from "./typedDocument.ts";
import type { ActionContext, OpenedDocument, OpeningActions } from "./workbenchActions.ts";
import type { Refusal } from "./workbenchState.ts";

const BODY: KeyPath = ["truck", "body"];

export function openingActions({ set, get }: ActionContext, onOpened: () => void): OpeningActions {
  const open = (slice: DocumentSlice, opened: Partial<OpenedDocument>) => {
    get().endGesture();
    const { documentId, document } = slice;
    const isSaved = opened.isSaved ?? false;
    set((s) => ({
      ...slice,
      travel: opened.travel ?? 0,
      steer: opened.steer ?? 0,
      selection: null,
      refusal: null,
      hiddenParts: opened.hiddenParts ?? [],
      isAligned: opened.isAligned ?? false,
      saved: isSaved && document ? { ...s.saved, [documentId]: document } : s.saved,
    }));
    onOpened();
  };
  /** The text refused last, to be read again when mesh files are added. */
  let refused: { readonly text: string; readonly file: string; readonly meshes: GivenMeshes } | null = null;

  /** Makes a body part of each mesh file, as one step with the files; where it stands is to be given. */
  const addParts = (more: GivenMeshes) => {
    const { file, beginGesture, endGesture, insertItem } = get();
    const refusals = more.refusedIssues();
    if (refusals.length > 0) {
      set({ refusal: { issues: refusals, document: null, file } });
      return;
    }
    beginGesture();
    for (const [name, mesh] of more.files) {
      const shown = shownDocument(get());
      const body = valueAt(shown, BODY);
      const list: readonly unknown[] = Array.isArray(body) ? body : [];
      const names = list.map((part) => String(valueAt(part, ["name"])));
      const [guess] = "refused" in mesh || mesh.unit !== null ? [] : unitGuesses(mesh.positions);
      const unit = guess?.isLikely ? { unit: guess.unit } : {};
      const part = { name: freeName(name.replace(/\.[^.]*$/, ""), names), kind: "mesh", file: name };
      insertItem(BODY, list.length, { ...part, ...unit });
    }
    set(({ meshes }) => ({ meshes: meshes.with(more) }));
    endGesture();
  };

  return {
    openText(text, file, meshes = new GivenMeshes()) {
      const reading = meshes.forReading();
      const opening = readOpening(text, file, reading);
      // The truck tells whether parts go together, beyond each of them being sound.
      const made = opening.ok && trucks.make(opening.slice.document, file, null, reading);
      refused = { text, file, meshes };
      if (!opening.ok) set({ refusal: opening.refusal });
      else if (made && !made.ok)
        set({ refusal: { issues: made.issues, document: opening.slice.document, file } });
      else {
        refused = null;
        open(opening.slice, { isSaved: true });
      }
    },
    addMeshes(more) {
      const { document, meshes } = get();
      if (get().refusal && refused) {
        const together = refused.meshes.with(more);
        get().openText(refused.text, refused.file, together);
        return;
      }
      if (document === null) return;
      const asked = meshNamesIn(document);
      const isAsked = [...more.files.keys()].some((name) => asked.has(name));
      if (isAsked) set({ meshes: meshes.with(more) });
      else addParts(more);
    },
    openDocument(opened) {
      const { document, file, meshes = new GivenMeshes(), variant = null, drafts = {} } = opened;
      const documentId = opened.documentId ?? newDocumentId();
      open({ documentId, document, file, meshes, variant, drafts }, opened);
    },
    newTruck(units) {
      get().openDocument({ document: newTruckDocument(units), file: "new-truck.json" });
    },
    openRefused() {
      const { refusal } = get();
      if (!refusal?.document) return;
      get().openDocument({
        document: refusal.document,
        file: refusal.file,
        meshes: refused?.meshes ?? new GivenMeshes(),
        isSaved: true,
      });
    },
    refuse: (issue) => set({ refusal: { issues: [issue], document: null, file: issue.file } }),
    dismissRefusal: () => set({ refusal: null }),
    markSaved: (document, file) => set((s) => ({ file, saved: { ...s.saved, [s.documentId]: document } })),
  };
}

/** A text read for the board. */
export type Opening =
  | { readonly ok: true; readonly slice: DocumentSlice & { readonly document: TypedDocument } }
  | { readonly ok: false; readonly refusal: Refusal; readonly emptySlice: DocumentSlice };

/** Reads the text of a setup file as strictly as the command line does: every variant must be sound. */
export function readOpening(text: string, file: string, meshes: GivenMeshes): Opening {
  const common = { documentId: newDocumentId(), file, meshes, variant: null, drafts: {} };
  const read = readSetup(text, file, null, meshes);
  if (read.ok) return { ok: true, slice: { ...common, document: read.value.document } };
  const refusal = { issues: read.issues, document: setupIn(text), file };
  return { ok: false, refusal, emptySlice: { ...common, document: null } };
}

/** The document of a text that is JSON and says that it is a setup; else null. */
function setupIn(text: string): TypedDocument | null {
  try {
    const value = JSON.parse(text) as unknown;
    const isSetup =
      typeof value === "object" && value !== null && (value as TypedDocument).format === "wellsweep-setup";
    return isSetup ? (value as TypedDocument) : null;
  } catch {
    return null;
  }
}
