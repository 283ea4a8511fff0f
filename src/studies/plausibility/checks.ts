import { READING_KEYS } from "../../setup/types/asBuiltTypes.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { UnusualCheck } from "../../setup/types/unusualChecks.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { clampHeight, jigReadingsOf } from "../jig/jigReadings.ts";
import { orderedKnuckle } from "../jig/jigSheet.ts";
import type { Model } from "../model/model.ts";
import { unusualBuild, unusualMultiples, unusualOrder } from "./blockSizes.ts";
import { mixedFileUnits } from "./fileUnits.ts";
import { farAwayPoints, mixedSides } from "./points.ts";
import { degrees, inches, ofPlace, outOf } from "./ranges.ts";
import { crossedTieRod, leaningArms, leaningAxis, leaningWheel, oddSpan } from "./standing.ts";
import { tenTimesNeighbors } from "./tenTimes.ts";
import { isUsual, meantBy, type Unusual, type UsualRange } from "./unusual.ts";
import { lipInTire, oddBackspacing, oddLoadedRadius, oddRideHeight, oddTrack } from "./wheelAndBody.ts";

/** What a hub face measures, from the steering axis along the pin. Common practice, no source. */
const HUB_FACE_RANGE = inches(3, 10);

/**
 * Sizes that stand on their own, and what pickups and vans have there. Common practice, no source; wide enough for drop
 * knuckles, narrowed clips and one-ton trucks.
 */
const SIZES: readonly (readonly [KeyPath, UsualRange])[] = [
  [["knuckle", "span"], inches(6, 20)],
  [["knuckle", "pinHeight"], inches(-1, 13)],
  [["knuckle", "pinAngle"], degrees(0, 20)],
  [["knuckle", "pinLead"], inches(-1.5, 1.5)],
  [["truck", "wheelbase"], inches(70, 220)],
  [["truck", "steering", "stroke"], inches(0.75, 4.5)],
  [["truck", "steering", "swing"], degrees(10, 55)],
  [["wheel", "rimWidth"], inches(4, 16)],
  [["alignment", "toe"], degrees(-3, 3)],
  [["travel", "bump"], inches(0, 12)],
  [["travel", "droop"], inches(-12, 0)],
  [["allowance"], inches(0, 3)],
  [["hardware", "rotor", "diameter"], inches(8, 18)],
  [["hardware", "rotor", "thickness"], inches(0.25, 2)],
];

/** Sizes out of the usual, one by one. */
function unusualSizes(setup: Setup): readonly Unusual[] {
  return SIZES.flatMap(([path, range]) => ofPlace("size", path, range, setup));
}

/** The hub face, out of the usual. */
function unusualHubFace(setup: Setup): readonly Unusual[] {
  return outOf("hubFace", ["knuckle", "hubFace"], setup.knuckle.hubFace, HUB_FACE_RANGE, setup);
}

/** mm and rad, either way of what the sheet asks for: a knuckle farther off than that is not the one on order. Common practice, no source. */
const OFF = { length: 0.6 * MM_PER_INCH, angle: (6 / 180) * Math.PI } as const;

/** Readings off the jig that no knuckle on order gives: a whole inch misread on the tape, the other unit, a decimal place. */
function oddReadings(setup: Setup): readonly Unusual[] {
  const { asBuilt, jig, units } = setup;
  if (asBuilt === null) return [];
  const ordered = orderedKnuckle(setup);
  return (["left", "right"] as const).flatMap((side): readonly Unusual[] => {
    const read = asBuilt[side];
    if (read === null) return [];
    const wanted = jigReadingsOf(ordered, jig, clampHeight(read.clampedAt, ordered, jig));
    return READING_KEYS.flatMap((key): readonly Unusual[] => {
      const value = read.readings[key];
      const kind = key === "faceAngle" ? "angle" : "length";
      const range = { least: wanted[key] - OFF[kind], most: wanted[key] + OFF[kind] };
      if (value === undefined || isUsual(value, range)) return [];
      const slips = meantBy(value, range, kind, units);
      const inch = [-1, 1].map((way) => value + way * MM_PER_INCH).find((one) => isUsual(one, range));
      const meant =
        kind === "length" && inch !== undefined ? [...slips, { slip: "inch", value: inch } as const] : slips;
      const paths: Unusual["paths"] = [["asBuilt", side, key]];
      return [{ check: "jigReading", paths, kind, value, ...range, meant, beside: wanted[key] }];
    });
  });
}

/** One check for plausible slips. */
export interface PlausibilityCheck {
  readonly name: UnusualCheck;
  /**
   * Of what it judges: the file as a whole, single numbers, or what several numbers make together. While something of an
   * earlier sort is unusual, later ones are not asked: they would tell the same slip again.
   */
  readonly of: "file" | "number" | "together";
  /** Why such a value is plausibly a slip. */
  readonly reason: string;
  readonly source: string;
  readonly look: (model: Model) => readonly Unusual[];
}

const NO_SOURCE = "common practice, no source";

/** Every check, first of all the ones that explain others. A field is told of by the first that finds it. */
export const CHECKS: readonly PlausibilityCheck[] = [
  {
    name: "fileUnits",
    of: "file",
    source: NO_SOURCE,
    reason:
      "lower ball joints of trucks stand 15 to 40 in from the center plane, and upper ones 5 to 22 in over them",
    look: ({ setup }) => mixedFileUnits(setup),
  },
  {
    name: "leftRight",
    of: "number",
    source: "the axes of the setup file, public/docs/definitions.md",
    reason:
      "points are given for the left side, where y is more than 0; the right side is their mirror image",
    look: ({ setup }) => mixedSides(setup),
  },
  {
    name: "tenTimes",
    of: "number",
    source: NO_SOURCE,
    reason: "neighbors along one part agree, and this one has its decimal point elsewhere",
    look: ({ setup }) => tenTimesNeighbors(setup),
  },
  {
    name: "farAway",
    of: "number",
    source: NO_SOURCE,
    reason: "no part of a truck lies there, measured from axle line, center plane and floor",
    look: ({ setup }) => farAwayPoints(setup),
  },
  {
    name: "size",
    of: "number",
    source: NO_SOURCE,
    reason: "pickups and vans have it within a known range",
    look: ({ setup }) => unusualSizes(setup),
  },
  {
    name: "hubFace",
    of: "number",
    source: NO_SOURCE,
    reason: "mounting faces stand near the steering axis, measured along the pin",
    look: ({ setup }) => unusualHubFace(setup),
  },
  {
    name: "backspacing",
    of: "number",
    source: NO_SOURCE,
    reason: "the mounting face lies between the edges of the rim; only wheels for dual rears go past them",
    look: ({ setup }) => oddBackspacing(setup),
  },
  {
    name: "loadedRadius",
    of: "number",
    source: NO_SOURCE,
    reason: "a tire under load loses a few hundredths of its radius, not more than 15 in 100",
    look: oddLoadedRadius,
  },
  {
    name: "buildSize",
    of: "number",
    source: NO_SOURCE,
    reason: "knuckles, what is bolted to them and jigs are made in sizes within a known range",
    look: ({ setup }) => [...unusualBuild(setup), ...unusualOrder(setup)],
  },
  {
    name: "loadMultiple",
    of: "number",
    source: NO_SOURCE,
    reason: "load cases put a few times the corner’s weight on a wheel, not ten times that",
    look: ({ setup }) => unusualMultiples(setup),
  },
  {
    name: "jigReading",
    of: "number",
    source: "the jig sheet of this very order, public/docs/jig-and-as-built.md",
    reason: "a knuckle that far from its order would be another one",
    look: ({ setup }) => oddReadings(setup),
  },
  {
    name: "span",
    of: "together",
    source: NO_SOURCE,
    reason:
      "a knuckle is about as tall as the ball joints of its arms are apart; taller ball joints add up to about 1 in",
    look: oddSpan,
  },
  {
    name: "armAngle",
    of: "together",
    source: NO_SOURCE,
    reason: "arms of a truck that stands are within 32° of level, upper ones within 40°",
    look: leaningArms,
  },
  {
    name: "steeringAxis",
    of: "together",
    source: NO_SOURCE,
    reason: "kingpin inclination is 0 to 22°, caster −8 to 15°",
    look: leaningAxis,
  },
  {
    name: "camber",
    of: "together",
    source: NO_SOURCE,
    reason: "wheels of a truck that stands lean by a few degrees, before an alignment too, not by 9",
    look: leaningWheel,
  },
  {
    name: "tieRodAcross",
    of: "together",
    source: NO_SOURCE,
    reason: "tie rods run across the truck, with both ends ahead of the axle line or both behind it",
    look: crossedTieRod,
  },
  {
    name: "rideHeight",
    of: "together",
    source: "the axes of the setup file, public/docs/definitions.md",
    reason:
      "the tire stood on the floor that heights were measured from; a drop knuckle lifts it by its drop",
    look: oddRideHeight,
  },
  {
    name: "lipTrack",
    of: "together",
    source: NO_SOURCE,
    reason: "the middle of the tire stands at most 10 in inside of the fender lip and 4 in outside of it",
    look: oddTrack,
  },
  {
    name: "lipInTire",
    of: "together",
    source: "two solids do not fill one place",
    reason:
      "with the wheel that was on it, no metal was inside the tire while the truck stood to be measured",
    look: lipInTire,
  },
];
