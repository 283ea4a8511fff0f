import { radFromDeg } from "../../units/angle.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import type { ReadingKind, ReadingSize } from "./readingTypes.ts";

/** Sizes of a wheel or tire lying on a bench: caliper or straightedge, to the nearest sixteenth. */
const ON_THE_BENCH = mmFromInches(1 / 16);

/**
 * How well a reading is known that does not say so: one standard deviation, mm and radians. A tape itself reads to 1/64 in
 * (half a 1/32 over root 3, JCGM 100:2008, 4.3.7); what makes a reading under a truck worse is where its ends are held.
 * These shares are common practice, no source: a shop that reads a thing twice sees its own.
 */
export const DEFAULT_READING_WITHIN: Readonly<Record<Exclude<ReadingKind, "size">, number>> & {
  readonly size: Readonly<Record<ReadingSize, number>>;
} = {
  /** Both ends are held against the middle of a bolt or a ball joint by eye. */
  between: mmFromInches(1 / 16),
  /** A rule standing on the floor; the floor is no flatter. */
  height: mmFromInches(1 / 16),
  /** The centerline has to be struck first, and the tape held square to it. */
  offset: mmFromInches(1 / 8),
  /** The axle line has to be struck first, and the tape held along the truck. */
  ahead: mmFromInches(1 / 8),
  /** Angle finders are good to 0.1 or 0.2 degrees; an arm has no straight edge from pivot to joint. */
  angle: radFromDeg(0.5),
  /** A bob that hangs still, and the width of the mark. */
  plumb: mmFromInches(1 / 16),
  /** Stick, rule and square one upon the other. */
  stations: mmFromInches(1 / 8),
  size: {
    /** Hub to hub along a truck whose wheels stand straight within a degree. */
    wheelbase: mmFromInches(1 / 4),
    /** Tread centers are judged by eye, and camber of up to a degree is not in it. */
    track: mmFromInches(1 / 4),
    frameWidth: mmFromInches(1 / 16),
    /** Tires grow and squat with pressure and load. */
    "tire.diameter": mmFromInches(1 / 8),
    "tire.sectionWidth": mmFromInches(1 / 8),
    "tire.treadWidth": mmFromInches(1 / 8),
    "tire.shoulderDrop": ON_THE_BENCH,
    "wheel.backspacing": ON_THE_BENCH,
    "wheel.lipToLip": ON_THE_BENCH,
  },
};
