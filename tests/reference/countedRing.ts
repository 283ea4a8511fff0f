import type { HullProfile } from "../../src/gaps/ring/hullProfile.ts";
import type { RingShape } from "../../src/gaps/ring/ringShape.ts";

/** A ring that counts how often it is looked at: what a gap costs, told without a clock. */
export interface CountedRing {
  readonly ring: RingShape;
  /** Looks since it was asked last: at the section, at its hull profile. */
  readonly looks: () => readonly [number, number];
}

export function countedRing(shape: RingShape): CountedRing {
  let section = 0;
  let profile = 0;
  const hullProfile: HullProfile = {
    ...shape.hullProfile,
    get edges() {
      profile++;
      return shape.hullProfile.edges;
    },
  };
  const ring: RingShape = {
    ...shape,
    hullProfile,
    get pieceStarts() {
      section++;
      return shape.pieceStarts;
    },
    get boundary() {
      section++;
      return shape.boundary;
    },
  };
  const looks = () => {
    const found = [section, profile] as const;
    section = 0;
    profile = 0;
    return found;
  };
  return { ring, looks };
}
