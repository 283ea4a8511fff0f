import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import type { GivenMeshes } from "./givenMeshes.ts";

/** A setup file's JSON as typed. May have issues; never changed in place. */
export type TypedDocument = Readonly<Record<string, unknown>>;

/** Text typed into a field that the file cannot hold as it is: kept until it is mended, so that nothing typed is lost. */
export interface Draft {
  /** The variant it was typed for; null = the setup as it stands. */
  readonly variant: string | null;
  readonly path: KeyPath;
  readonly text: string;
  /** What is wrong with it and what would be right, one sentence without a full stop. */
  readonly mend: string;
}

/** Drafts by `draftKey`. */
export type Drafts = Readonly<Record<string, Draft>>;

/** What is undone and redone: the document on the board and what was typed into it. */
export interface DocumentSlice {
  /** Tells one opened setup from another, also of the same file; the key it is kept under in the browser. */
  readonly documentId: string;
  /** null = none has been opened yet. */
  readonly document: TypedDocument | null;
  /** Name of its file. */
  readonly file: string;
  readonly meshes: GivenMeshes;
  /** The variant asked for, to which edits go; null = the setup as it stands. */
  readonly variant: string | null;
  readonly drafts: Drafts;
}

/** The slice of a state that holds more. */
export function documentSlice(state: DocumentSlice): DocumentSlice {
  const { documentId, document, file, meshes, variant, drafts } = state;
  return { documentId, document, file, meshes, variant, drafts };
}

/** Whether the two are one step: which variant is shown and what its file is called make no difference. */
export function isSameSlice(a: DocumentSlice, b: DocumentSlice): boolean {
  return (
    a.documentId === b.documentId &&
    a.document === b.document &&
    a.meshes === b.meshes &&
    a.drafts === b.drafts
  );
}

/** The key of a draft. */
export function draftKey(variant: string | null, path: KeyPath): string {
  return `${variant === null ? "" : JSON.stringify(variant)} ${keyText(path)}`;
}

/** The drafts with one more, or another in its place. */
export function withDraft(drafts: Drafts, draft: Draft): Drafts {
  return { ...drafts, [draftKey(draft.variant, draft.path)]: draft };
}

/** The drafts changed one by one; `null` takes one out. The same drafts when none changes. */
export function mapDrafts(drafts: Drafts, change: (draft: Draft) => Draft | null): Drafts {
  const before = Object.values(drafts);
  const after = before.map(change);
  if (after.every((draft, i) => draft === before[i])) return drafts;
  return Object.fromEntries(
    after.flatMap((draft) => (draft ? [[draftKey(draft.variant, draft.path), draft]] : [])),
  );
}

/** A name for a setup put on the board, new every time. */
export function newDocumentId(): string {
  const random = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(random, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The unit of bare lengths in a document; inches where it does not say. */
export function fileUnitsOf(document: unknown): FileUnits {
  return valueAt(document, ["units"]) === "mm" ? "mm" : "in";
}
