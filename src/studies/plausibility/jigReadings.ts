import { READING_KEYS } from "../../setup/types/asBuiltTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { clampHeight, jigReadingsOf } from "../jig/jigReadings.ts";
import { orderedKnuckle } from "../jig/jigSheet.ts";
import { isUsual, meantBy, type Unusual } from "./unusual.ts";

/** mm and rad, either way of what the sheet asks for: a knuckle farther off than that is not the one on order. Common practice, no source. */
const OFF = { length: 0.6 * MM_PER_INCH, angle: (6 / 180) * Math.PI } as const;

/** Readings off the jig that no knuckle on order gives: a whole inch misread on the tape, the other unit, a decimal place. */
export function oddReadings(setup: Setup): readonly Unusual[] {
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
