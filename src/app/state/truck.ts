import { readSetup } from "../../setup/readSetup.ts";
import type { Result, Setup } from "../../setup/types.ts";
import { type Model, modelOf } from "../../studies/model.ts";

/** A setup that goes together, with the model built from it. Its identity is the key of everything computed from it. */
export interface Truck {
  readonly file: string;
  readonly setup: Setup;
  readonly model: Model;
}

/** Reads a text and puts the truck together with one of its variants (null = none); or every issue found. */
export function truckOf(text: string, file: string, variant: string | null): Result<Truck> {
  const read = readSetup(text, file, variant);
  if (!read.ok) return read;
  const { setup } = read.value;
  const built = modelOf(setup, file);
  if (!built.ok) return built;
  return { ok: true, value: { file, setup, model: built.model } };
}
