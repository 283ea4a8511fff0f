import { isSameJson } from "../../../setup/editing/writtenValues.ts";
import type { KeptPoint } from "../../state/keptPoints.ts";
import type { DocumentSlice, Drafts, TypedDocument } from "../../state/typedDocument.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";

/** Of what is kept; a later form gets another number. */
const VERSION = 1;

/** Steps kept, each way. They share what they did not change, also in the storage. */
const MAX_KEPT = 200;

interface StoredStep {
  readonly document: TypedDocument;
  readonly variant: string | null;
  readonly drafts: Drafts;
}

/** What was done to one setup since it was opened, and the points of it that have a name. */
export interface StoredSteps {
  readonly version: typeof VERSION;
  /** Oldest first. */
  readonly past: readonly StoredStep[];
  /** The document they lead to. */
  readonly now: TypedDocument;
  /** Undone, the last of them the first to be done again. */
  readonly future: readonly StoredStep[];
  readonly points: readonly KeptPoint[];
}

export const stepsKey = (documentId: string): string => `steps:${documentId}`;

/** The steps of the setup on the board. Those before it was opened are another setup's. */
export function storedSteps(store: WorkbenchStore, points: readonly KeptPoint[]): StoredSteps | null {
  const { documentId, document } = store.getState();
  if (document === null) return null;
  const { pastStates, futureStates } = store.temporal.getState();
  const since = (slices: readonly Partial<DocumentSlice>[]) => {
    const own = slices.slice(slices.findLastIndex((slice) => slice.documentId !== documentId) + 1);
    return own
      .slice(-MAX_KEPT)
      .flatMap(({ document, variant = null, drafts = {} }): StoredStep[] =>
        document ? [{ document, variant, drafts }] : [],
      );
  };
  return { version: VERSION, past: since(pastStates), now: document, future: since(futureStates), points };
}

/** Steps from storage, which may hold anything; null = none that this page can read. */
export function readSteps(stored: unknown): StoredSteps | null {
  if (!isObject(stored) || stored.version !== VERSION || !isObject(stored.now)) return null;
  const steps = (list: unknown) => (Array.isArray(list) ? list.filter(isStep) : []);
  const points = Array.isArray(stored.points) ? stored.points.filter(isPoint) : [];
  return {
    version: VERSION,
    past: steps(stored.past),
    now: stored.now,
    future: steps(stored.future),
    points,
  };
}

/**
 * Gives the setup on the board, just put back, its steps again. What was written of it after its steps were is one step
 * more. Whatever steps there were are gone.
 */
export function putStepsBack(store: WorkbenchStore, { past, now, future }: StoredSteps): void {
  const { documentId, document, file, meshes, variant } = store.getState();
  const slices = (steps: readonly StoredStep[]): DocumentSlice[] =>
    steps.map((step) => ({ ...step, documentId, file, meshes }));
  const isNewer = !isSameJson(document, now);
  store.temporal.setState({
    pastStates: slices(isNewer ? [...past, { document: now, variant, drafts: {} }] : past),
    futureStates: isNewer ? [] : slices(future),
  });
}

function isStep(value: unknown): value is StoredStep {
  return isObject(value) && isObject(value.document) && isObject(value.drafts) && isVariant(value.variant);
}

function isPoint(value: unknown): value is KeptPoint {
  return (
    isObject(value) &&
    typeof value.name === "string" &&
    typeof value.at === "number" &&
    isObject(value.document)
  );
}

function isVariant(value: unknown): boolean {
  return value === null || typeof value === "string";
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
