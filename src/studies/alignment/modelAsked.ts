import type { Setup } from "../../setup/types/types.ts";
import { type Model, type ModelResult, modelOf } from "../model/model.ts";
import { alignedModel } from "./alignedModel.ts";
import { bothSides } from "./bothSides.ts";
import { setSide } from "./setSide.ts";

/** A truck to be put together, as plain data that can be handed to a worker. */
export interface ModelAsk {
  /** As read: the truck as bolted on. */
  readonly setup: Setup;
  /** The file's name for the issues. */
  readonly file: string;
  /** Aligned to the setup's targets first, as near as its adjusters go. */
  readonly isAligned: boolean;
}

/**
 * The truck asked for. One without targets, or that cannot stand at their stance, stays as bolted on; `alignment.standing`
 * of its setup tells which it is.
 */
export function modelAsked({ setup, file, isAligned }: ModelAsk): ModelResult {
  const built = modelOf(setup, file);
  if (!built.ok || !isAligned) return built;
  return { ok: true, value: alignedFrom(built.value, file) ?? built.value };
}

/** A truck as bolted on, aligned; null without targets, or where it cannot stand at their stance. */
export function alignedFrom(bolted: Model, file: string): Model | null {
  if (bolted.setup.alignment.targets === null) return null;
  const solved = bothSides(bolted, setSide);
  if (!solved.ok) return null;
  const aligned = alignedModel(bolted, solved.alignment, file);
  return aligned.ok ? aligned.value : null;
}
