import type { KeyPath } from "../types/keyPath.ts";
import { MAX_PLACES } from "./limits.ts";

interface Place {
  /** All of it is in the set. */
  whole: boolean;
  readonly inner: Map<string | number, Place>;
}

/** Places of a document, asked for by path in as many steps as the path has, however many they are. */
export class PathSet {
  readonly #top: Place = { whole: false, inner: new Map() };

  /** Adds a place and all inside it. Where an object or list has more than `MAX_PLACES` of them, it is added as a whole. */
  add(path: KeyPath): void {
    let place = this.#top;
    for (const step of path) {
      if (place.whole) return;
      let next = place.inner.get(step);
      if (next === undefined) {
        if (place.inner.size === MAX_PLACES) break;
        next = { whole: false, inner: new Map() };
        place.inner.set(step, next);
      }
      place = next;
    }
    place.whole = true;
    place.inner.clear();
  }

  /** Whether a place of the set is at the path, above it or inside it. */
  touches(path: KeyPath): boolean {
    let place = this.#top;
    for (const step of path) {
      if (place.whole) return true;
      const next = place.inner.get(step);
      if (next === undefined) return false;
      place = next;
    }
    return place.whole || place.inner.size > 0;
  }
}
