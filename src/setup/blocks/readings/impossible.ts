import type { BetweenReading, PlaceReading, Reading } from "../../types/readingTypes.ts";

/** A reading that others rule out, and what is said of it. */
export interface ImpossibleReading {
  readonly reading: Reading;
  /** One sentence without a full stop. */
  readonly mend: string;
}

/** Standard deviations past which readings of the same thing are of different things. */
const APART = 12;

/**
 * Readings that no truck can give together, whatever its points are: a tape shorter than its ends are apart in height, ahead
 * or outboard; a triangle of tapes with one longer than the other two; the same thing read twice far apart. Those
 * told are the later ones; readings that are merely unlikely together are for the fit to find.
 * @param text a length in words
 */
export function refuseImpossible(
  readings: readonly Reading[],
  text: (mm: number) => string,
): readonly ImpossibleReading[] {
  const tapes = readings.filter((one): one is BetweenReading => one.kind === "between");
  const places = readings.filter(
    (one): one is PlaceReading => "point" in one && "is" in one && one.from === "centerline",
  );
  const found = [...tooShort(tapes, places, text), ...noTriangle(tapes, text), ...readTwice(readings, text)];
  const told = new Set<Reading>();
  return found.filter(({ reading }) => !told.has(reading) && told.add(reading));
}

function tooShort(
  tapes: readonly BetweenReading[],
  places: readonly PlaceReading[],
  text: (mm: number) => string,
): readonly ImpossibleReading[] {
  const words = { height: "in height", ahead: "fore and aft", offset: "sideways" } as const;
  return tapes.flatMap((tape) => {
    for (const kind of ["height", "ahead", "offset"] as const) {
      const at = (end: 0 | 1) => {
        const side = tape.side === "across" ? (end === 0 ? "left" : "right") : tape.side;
        return places.find((one) => one.kind === kind && one.point === tape.points[end] && one.side === side);
      };
      const [a, b] = [at(0), at(1)];
      if (!a || !b) continue;
      const apart = kind === "offset" && tape.side === "across" ? a.is + b.is : Math.abs(a.is - b.is);
      if (apart - tape.is > 4 * (a.within + b.within + tape.within))
        return [
          {
            reading: tape,
            mend: `is less than its two ends are apart ${words[kind]} by readings ${a.index + 1} and ${b.index + 1}, ${text(apart)}; read all three again`,
          },
        ];
    }
    return [];
  });
}

function noTriangle(
  tapes: readonly BetweenReading[],
  text: (mm: number) => string,
): readonly ImpossibleReading[] {
  const others = (tape: BetweenReading, a: string) =>
    tape.points[0] === a ? tape.points[1] : tape.points[1] === a ? tape.points[0] : null;
  return tapes.flatMap((long) => {
    if (long.side === "across") return [];
    const near = tapes.filter((one) => one !== long && one.side === long.side);
    const [a, b] = long.points;
    for (const first of near) {
      const middle = others(first, a);
      if (middle === null || middle === b) continue;
      const second = near.find((one) => others(one, b) === middle);
      if (!second) continue;
      const reach = first.is + second.is;
      if (long.is - reach > 4 * (long.within + first.within + second.within))
        return [
          {
            reading: long,
            mend: `makes no triangle with readings ${Math.min(first.index, second.index) + 1} and ${Math.max(first.index, second.index) + 1}, which together are ${text(reach)}; read all three again`,
          },
        ];
    }
    return [];
  });
}

function readTwice(readings: readonly Reading[], text: (mm: number) => string): readonly ImpossibleReading[] {
  const first = new Map<string, Reading & { readonly is: number }>();
  return readings.flatMap((one) => {
    if (!("is" in one)) return [];
    const key = thingRead(one);
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, one);
      return [];
    }
    if (Math.abs(one.is - before.is) <= APART * (one.within + before.within)) return [];
    const was =
      one.kind === "angle" ? `${((before.is / Math.PI) * 180).toFixed(1)} degrees` : text(before.is);
    return [
      {
        reading: one,
        mend: `is far from what reading ${before.index + 1} says of the same, ${was}; read it again`,
      },
    ];
  });
}

/** What a reading is of, alike for readings of the same thing; either order of a tape's ends. */
export function thingRead(reading: Reading): string {
  const { kind, side } = reading;
  switch (reading.kind) {
    case "between": {
      const { points } = reading;
      return [kind, side, ...(side === "across" ? points : [...points].sort())].join("\n");
    }
    case "height":
    case "ahead":
      return [kind, side, reading.point].join("\n");
    case "offset":
      return [kind, side, reading.from, reading.point].join("\n");
    case "angle":
      return [kind, side, reading.arm].join("\n");
    case "size":
      return [kind, reading.of].join("\n");
    case "plumb":
      return [kind, side, reading.point, reading.mark].join("\n");
    case "stations":
      return [kind, side, reading.part].join("\n");
  }
}
