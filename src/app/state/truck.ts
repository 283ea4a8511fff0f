import type { LoadedMeshes } from "../../setup/blockReading.ts";
import { resolveShown } from "../../setup/editing/resolveShown.ts";
import { KnownParts } from "../../setup/knownParts.ts";
import { readSetup } from "../../setup/readSetup.ts";
import type { Result, Setup } from "../../setup/types.ts";
import { type Model, modelOf } from "../../studies/model.ts";
import { GivenMeshes } from "./givenMeshes.ts";
import type { TypedDocument } from "./typedDocument.ts";

/** A setup that goes together, with the model built from it. Its identity is the key of everything computed from it. */
export interface Truck {
  readonly file: string;
  readonly setup: Setup;
  readonly model: Model;
}

/**
 * Reads a text and puts the truck together with one of its variants (null = none); or every issue found.
 * @param meshes the mesh files the setup may name; default none
 */
export function truckOf(
  text: string,
  file: string,
  variant: string | null,
  meshes: LoadedMeshes = new GivenMeshes(),
): Result<Truck> {
  const read = readSetup(text, file, variant, meshes);
  return read.ok ? assembled(read.value.setup, file) : read;
}

/** Puts trucks together while a document is edited. */
export interface TruckMaker {
  /** The truck of a document with one of its variants, or every issue of it; the same as long as nothing differs. */
  make(document: TypedDocument, file: string, variant: string | null, meshes: GivenMeshes): Result<Truck>;
}

interface Made {
  readonly file: string;
  readonly meshes: GivenMeshes;
  readonly result: Result<Truck>;
}

/** A maker that remembers what it made as long as the document is kept somewhere, and body parts across documents. */
export function truckMaker(): TruckMaker {
  const known = new KnownParts();
  const made = new WeakMap<TypedDocument, Map<string | null, Made>>();
  return {
    make(document, file, variant, meshes) {
      const ofDocument = made.get(document) ?? new Map<string | null, Made>();
      made.set(document, ofDocument);
      const before = ofDocument.get(variant);
      // Another name of the file makes no other truck; only issues tell it.
      const isSame = before?.meshes === meshes && (before.result.ok || before.file === file);
      if (before && isSame) return before.result;
      const resolved = resolveShown(document, file, variant, meshes.forReading(), known);
      const result = resolved.ok ? assembled(resolved.value, file) : resolved;
      ofDocument.set(variant, { file, meshes, result });
      return result;
    },
  };
}

function assembled(setup: Setup, file: string): Result<Truck> {
  const built = modelOf(setup, file);
  return built.ok ? { ok: true, value: { file, setup, model: built.model } } : built;
}
