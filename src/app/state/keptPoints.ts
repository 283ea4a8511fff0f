import { createStore } from "zustand/vanilla";
import type { TypedDocument } from "./typedDocument.ts";
import { commitTyped } from "./typing.ts";
import { workbench } from "./workbench.ts";

/** A state of a setup that was given a name, to come back to. */
export interface KeptPoint {
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly document: TypedDocument;
}

/** Kept points by the id of the setup they are of, oldest first. */
export const keptPoints = createStore<{ readonly of: Readonly<Record<string, readonly KeptPoint[]>> }>()(
  () => ({
    of: {},
  }),
);

/** Gives the setup on the board, as it is, a name to come back by; the same name again means the new state. */
export function keepPoint(name: string, at = Date.now()): void {
  commitTyped();
  const { documentId, document } = workbench.getState();
  if (document === null) return;
  setPoints(documentId, [
    ...pointsOf(documentId).filter((point) => point.name !== name),
    { name, at, document },
  ]);
}

/** Forgets a kept point of the setup on the board. The setup stays as it is. */
export function dropPoint(name: string): void {
  const { documentId } = workbench.getState();
  setPoints(
    documentId,
    pointsOf(documentId).filter((point) => point.name !== name),
  );
}

/** The kept points of a setup, oldest first; the same list until one comes or goes. */
export function pointsOf(documentId: string): readonly KeptPoint[] {
  return keptPoints.getState().of[documentId] ?? NONE;
}
const NONE: readonly KeptPoint[] = [];

export function setPoints(documentId: string, points: readonly KeptPoint[]): void {
  keptPoints.setState(({ of }) => ({ of: { ...of, [documentId]: points } }));
}
