import type { MeshResult } from "../../files/readMesh.ts";

/** What the worker is asked: one file, read once. */
export interface MeshQuestion {
  readonly name: string;
  readonly bytes: ArrayBuffer;
}

/** What it answers. */
export type MeshAnswer = MeshResult;
