import type { LoadedMesh, RefusedMesh } from "../../../setup/reading/blockReading.ts";
import { bareTyped } from "../../../setup/reading/typedPair.ts";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { GivenMeshes } from "../../state/givenMeshes.ts";
import type { DocumentSlice, Draft, Drafts, TypedDocument } from "../../state/typedDocument.ts";
import { draftKey } from "../../state/typedDocument.ts";
import type { Typed } from "../../state/typing.ts";
import type { ViewName } from "../../state/workbenchState.ts";

/** Of what is kept; a later form gets another number, and what an older page cannot read it leaves alone. */
const RECORD_VERSION = 1;

/** Everything of one setup on the board, as kept in the browser. Its mesh files are kept beside it, by `meshKey`. */
export interface SetupRecord {
  readonly version: typeof RECORD_VERSION;
  readonly documentId: string;
  readonly document: TypedDocument;
  readonly file: string;
  readonly variant: string | null;
  readonly drafts: readonly Draft[];
  readonly travel: number;
  readonly steer: number;
  readonly view: ViewName;
  readonly hiddenParts: readonly string[];
  /** Shown aligned, or as bolted on. */
  readonly isAligned: boolean;
  readonly isSaved: boolean;
  readonly meshNames: readonly string[];
  /** What was being typed and not yet put into the document. */
  readonly typed?: Typed;
}

/** One line of the list of setups worked on before. */
export interface RecentSetup {
  readonly documentId: string;
  readonly name: string;
  readonly file: string;
  /** Milliseconds since 1970, when it was last worked on. */
  readonly changedAt: number;
  /** What tells it from others with the same name: `P235/70R15, hub face 6 5/16, 3 variants`. */
  readonly summary: string;
}

/** The setup worked on last, on whatever page. */
export const LAST_KEY = "last";
export const RECENTS_KEY = "recents";
export const PREFERENCES_KEY = "preferences";
export const recordKey = (documentId: string): string => `setup:${documentId}`;
export const meshKey = (documentId: string, name: string): string => `mesh:${documentId}:${name}`;

/** What is kept of a state. */
export function recordOf(
  state: DocumentSlice & Pick<SetupRecord, "travel" | "steer" | "view" | "hiddenParts" | "isAligned">,
  isSaved: boolean,
  typed: Typed | null = null,
): SetupRecord | null {
  const { documentId, document, file, variant, drafts, meshes, travel, steer, view, hiddenParts, isAligned } =
    state;
  if (document === null) return null;
  return {
    version: RECORD_VERSION,
    documentId,
    document,
    file,
    variant,
    drafts: Object.values(drafts),
    travel,
    steer,
    view,
    hiddenParts,
    isAligned,
    isSaved,
    meshNames: loadedMeshes(meshes).map(([name]) => name),
    ...(typed ? { typed } : {}),
  };
}

/** The mesh files that gave a mesh. */
export function loadedMeshes(meshes: GivenMeshes): readonly (readonly [string, LoadedMesh])[] {
  return [...meshes.files].flatMap(([name, mesh]) => ("refused" in mesh ? [] : [[name, mesh] as const]));
}

/** A record from storage, which may hold anything; null = not one that this page can read. */
export function readRecord(stored: unknown): SetupRecord | null {
  if (!isObject(stored) || stored.version !== RECORD_VERSION) return null;
  const {
    documentId,
    document,
    file,
    variant,
    drafts,
    travel,
    steer,
    view,
    hiddenParts,
    isAligned,
    isSaved,
    meshNames,
  } = stored;
  if (typeof documentId !== "string" || !isObject(document) || typeof file !== "string") return null;
  const texts = (value: unknown) =>
    Array.isArray(value) ? value.filter((one) => typeof one === "string") : [];
  const number = (value: unknown) => (typeof value === "number" && Number.isFinite(value) ? value : 0);
  return {
    version: RECORD_VERSION,
    documentId,
    document,
    file,
    variant: typeof variant === "string" ? variant : null,
    drafts: Array.isArray(drafts) ? drafts.filter(isDraft) : [],
    travel: number(travel),
    steer: Math.min(1, Math.max(-1, number(steer))),
    view: VIEWS.find((one) => one === view) ?? "three-quarter",
    hiddenParts: texts(hiddenParts),
    isAligned: isAligned === true,
    isSaved: isSaved === true,
    meshNames: texts(meshNames),
    ...(isTyped(stored.typed) ? { typed: stored.typed } : {}),
  };
}

const VIEWS: readonly ViewName[] = ["three-quarter", "front", "side", "top", "well"];

/** The drafts of a record, by their keys. */
export function draftsOf(record: SetupRecord): Drafts {
  return Object.fromEntries(record.drafts.map((draft) => [draftKey(draft.variant, draft.path), draft]));
}

/** Mesh files from storage, those that are sound; one that is not is asked for again. */
export function meshesOf(names: readonly string[], stored: readonly unknown[]): GivenMeshes {
  return new GivenMeshes(
    new Map(
      names.flatMap((name, i): [string, LoadedMesh | RefusedMesh][] => {
        const mesh = stored[i];
        return isMesh(mesh) ? [[name, mesh]] : [];
      }),
    ),
  );
}

function isMesh(value: unknown): value is LoadedMesh {
  return isObject(value) && value.positions instanceof Float64Array && value.triangles instanceof Uint32Array;
}

/** The line of a record in the list. */
export function recentOf(record: SetupRecord, changedAt: number): RecentSetup {
  const { document, documentId, file } = record;
  const text = (...path: string[]) => {
    const value = bareTyped(valueAt(document, path));
    return typeof value === "string" || typeof value === "number" ? String(value) : null;
  };
  const variants = valueAt(document, ["variants"]);
  const count = Array.isArray(variants) ? variants.length : 0;
  const parts = [
    text("tire", "size"),
    text("knuckle", "hubFace") && `hub face ${text("knuckle", "hubFace")}`,
    count > 0 ? `${count} ${count === 1 ? "variant" : "variants"}` : null,
  ];
  const summary = parts.filter((part) => part !== null).join(", ");
  return { documentId, name: text("name") ?? file, file, changedAt, summary };
}

/** The list from storage, newest first, without what is no line of it. */
export function readRecents(stored: unknown): readonly RecentSetup[] {
  if (!Array.isArray(stored)) return [];
  return stored.filter(isRecent).sort((a, b) => b.changedAt - a.changedAt);
}

function isRecent(value: unknown): value is RecentSetup {
  return (
    isObject(value) &&
    ["documentId", "name", "file", "summary"].every((key) => typeof value[key] === "string") &&
    typeof value.changedAt === "number"
  );
}

function isTyped(value: unknown): value is Typed {
  return isObject(value) && isPathAndText(value) && typeof value.isOptional === "boolean";
}

function isPathAndText(value: Record<string, unknown>): boolean {
  return (
    Array.isArray(value.path) &&
    value.path.every((step) => typeof step === "string" || typeof step === "number") &&
    typeof value.text === "string"
  );
}

function isDraft(value: unknown): value is Draft {
  return (
    isObject(value) &&
    (value.variant === null || typeof value.variant === "string") &&
    isPathAndText(value) &&
    typeof value.mend === "string"
  );
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
