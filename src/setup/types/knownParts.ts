import type { BodyPart } from "./truckTypes.ts";

interface KnownPart {
  readonly units: string;
  readonly mesh: object | undefined;
  readonly part: BodyPart;
}

/** A part without the uncertainties of its numbers, and what was found of them. */
export interface TakenWithin<Found> {
  readonly plain: object;
  readonly found: readonly Found[];
}

/** Stands for a part whose shape was found sound, where only the shape of the others is looked at. */
const SOUND_PART = { name: "known", kind: "path", radius: 0, points: [[0, 0, 0]] };

/**
 * Body parts read before, by the identity of what was typed: a scanned fender of a hundred thousand triangles is then
 * checked and placed once, not at every edit of something else and in every variant. Only for callers that never change
 * a document in place.
 */
export class KnownParts {
  readonly #known = new WeakMap<object, KnownPart>();
  readonly #taken = new WeakMap<object, TakenWithin<unknown>>();

  /** The part made of `typed` before, with the same units and the same mesh file; undefined = not known. */
  find(typed: object, units: string, mesh: object | undefined): BodyPart | undefined {
    const known = this.#known.get(typed);
    return known && known.units === units && known.mesh === mesh ? known.part : undefined;
  }

  /** Keeps a sound part. */
  keep(typed: object, units: string, mesh: object | undefined, part: BodyPart): void {
    this.#known.set(typed, { units, mesh, part });
  }

  /** A part as typed without the uncertainties of its numbers: the same object for the same part. @param take when it is new */
  taken<Found>(typed: object, take: () => TakenWithin<Found>): TakenWithin<Found> {
    const before = this.#taken.get(typed) as TakenWithin<Found> | undefined;
    if (before) return before;
    const now = take();
    this.#taken.set(typed, now);
    return now;
  }

  /** The document with a small sound part in place of every known one, positions kept. */
  withStandIns(document: unknown): unknown {
    const truck = (document as { readonly truck?: { readonly body?: unknown } } | null | undefined)?.truck;
    const body = truck?.body;
    if (!Array.isArray(body) || !body.some((part) => this.#isKnown(part))) return document;
    const lighter = body.map((part) => (this.#isKnown(part) ? SOUND_PART : part));
    return { ...(document as object), truck: { ...truck, body: lighter } };
  }

  #isKnown(part: unknown): boolean {
    return typeof part === "object" && part !== null && this.#known.has(part);
  }
}
