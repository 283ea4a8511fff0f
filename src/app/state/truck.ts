import { resolveShown } from "../../setup/editing/resolveShown.ts";
import type { LoadedMeshes } from "../../setup/reading/blockReading.ts";
import { readSetup } from "../../setup/readSetup.ts";
import { KnownParts } from "../../setup/types/knownParts.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import { alignedFrom, type ModelAsk } from "../../studies/alignment/modelAsked.ts";
import { type Model, modelOf } from "../../studies/model/model.ts";
import { GivenMeshes } from "./givenMeshes.ts";
import { isMovedAlike } from "./sameTruck.ts";
import type { TypedDocument } from "./typedDocument.ts";

/** A setup that goes together, with the model built from it. Its identity is the key of everything computed from it. */
export interface Truck {
  readonly file: string;
  /** As the truck stands: of an aligned one with its pivots moved. */
  readonly setup: Setup;
  readonly model: Model;
  /** The truck as bolted on; the very same model where it is not aligned. */
  readonly bolted: Model;
  /** What a worker makes the same model of. */
  readonly ask: ModelAsk;
  /** The document it was made of, with its variants (`setup.variant` = the one); null = of a text, or of a setup. */
  readonly document: TypedDocument | null;
  readonly motion: Motion;
}

/** What stands, moves and touches: one and the same for trucks that differ only in what is noted beside it. */
export interface Motion {
  /** null = not aligned yet. */
  aligned: Motion | null;
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
  return read.ok ? boltedTruck(read.value.setup, file) : read;
}

/** Puts trucks together while a document is edited. */
export interface TruckMaker {
  /**
   * The truck of a document with one of its variants, or every issue of it; the same as long as nothing differs.
   * @param isAligned aligned to its targets, as near as its adjusters go; without targets, or where it cannot stand at
   * their stance, it stays as bolted on. Default false
   */
  make(
    document: TypedDocument,
    file: string,
    variant: string | null,
    meshes: GivenMeshes,
    isAligned?: boolean,
  ): Result<Truck>;
}

interface Made {
  readonly file: string;
  readonly meshes: GivenMeshes;
  readonly result: Result<Truck>;
  /** null = not asked for yet. */
  aligned: Truck | null;
}

/** Trucks of one variant that are remembered: an edit may be several changes, and undo goes back by them. */
const RECENT = 8;

/** Variants whose trucks are remembered: each wheel of a shop's list is tried under a name of its own. */
const RECENT_NAMES = 64;

/** A maker that remembers what it made as long as the document is kept somewhere, and body parts across documents. */
function truckMaker(): TruckMaker {
  const known = new KnownParts();
  const made = new WeakMap<TypedDocument, Map<string | null, Made>>();
  /** Of each variant the trucks made last, the newest first; the variant made last is the last of them. */
  const last = new Map<string | null, readonly Truck[]>();
  return {
    make(document, file, variant, meshes, isAligned = false) {
      const ofDocument = made.get(document) ?? new Map<string | null, Made>();
      made.set(document, ofDocument);
      let one = ofDocument.get(variant);
      // Another name of the file makes no other truck; only issues tell it.
      if (one?.meshes !== meshes || (!one.result.ok && one.file !== file)) {
        const resolved = resolveShown(document, file, variant, meshes.forReading(), known);
        const before = last.get(variant) ?? [];
        const result = resolved.ok ? boltedTruck(resolved.value, file, document, before) : resolved;
        if (result.ok) {
          last.delete(variant);
          last.set(variant, [result.value, ...before].slice(0, RECENT));
          const [oldest] = last.keys();
          if (last.size > RECENT_NAMES) last.delete(oldest!);
        }
        one = { file, meshes, result, aligned: null };
        ofDocument.set(variant, one);
      } else {
        // What is asked for again is not the oldest: the truck on the board stays beside a long list of wheels.
        const kept = last.get(variant);
        if (kept && last.delete(variant)) last.set(variant, kept);
      }
      if (!isAligned || !one.result.ok) return one.result;
      one.aligned ??= alignedTruck(one.result.value);
      return { ok: true, value: one.aligned };
    },
  };
}

/** The page's one maker: a truck that two places show is one and the same, and worked out once. */
export const trucks = truckMaker();

/**
 * A setup put together as bolted on.
 * @param document what it was read from; default none
 * @param before trucks whose motion it shares where it moves alike: what was found of that stands. Default none
 */
export function boltedTruck(
  setup: Setup,
  file: string,
  document: TypedDocument | null = null,
  before: readonly Truck[] = [],
): Result<Truck> {
  const built = modelOf(setup, file);
  if (!built.ok) return built;
  const { value: model } = built;
  const ask = { setup, file, isAligned: false };
  const alike = before.find((one) => isMovedAlike(one.ask.setup, setup));
  const motion = alike?.motion ?? { aligned: null };
  return { ok: true, value: { file, setup: model.setup, model, bolted: model, ask, document, motion } };
}

/** The truck aligned to its targets, or the very same where it cannot be. */
export function alignedTruck(truck: Truck): Truck {
  const { file, bolted, ask, document } = truck;
  const model = alignedFrom(bolted, file);
  if (model === null) return truck;
  truck.motion.aligned ??= { aligned: null };
  const motion = truck.motion.aligned;
  return { file, setup: model.setup, model, bolted, ask: { ...ask, isAligned: true }, document, motion };
}
