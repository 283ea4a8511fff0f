import type { LoadedMeshes } from "../setup/reading/blockReading.ts";
import { readSetup } from "../setup/readSetup.ts";
import type { Result } from "../setup/types/types.ts";
import { modelAsked } from "../studies/alignment/modelAsked.ts";
import type { Model } from "../studies/model/model.ts";

export interface OpenOptions {
  /** What issues call the setup. Default "setup". */
  readonly file?: string;
  /** Name of a variant; null = the setup as it stands. Default null. */
  readonly variant?: string | null;
  /** Align the truck to the setup's targets first, as near as its adjusters go. Default no. */
  readonly isAligned?: boolean;
  /** Mesh files that the setup names, read already (`readMesh`). Default none. */
  readonly meshes?: LoadedMeshes;
}

/**
 * Reads the text of a setup file and puts its truck together.
 * @returns the truck, or every issue found. Never throws: a mistake in the text is an issue.
 */
export function openTruck(text: string, options: OpenOptions = {}): Result<Model> {
  const { file = "setup", variant = null, isAligned = false, meshes } = options;
  const read = readSetup(text, file, variant, meshes);
  return read.ok ? modelAsked({ setup: read.value.setup, file, isAligned }) : read;
}
