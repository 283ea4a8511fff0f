import { bodyPointOf } from "../../setup/blocks/readings/readingPoint.ts";
import { fieldLabel } from "../../setup/fields/fieldLabels.ts";
import type { PointName, ReadingSize } from "../../setup/types/readingTypes.ts";
import { degFromRad } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Ask } from "../measure/ask.ts";
import { angleText, lengthText } from "./lengths.ts";

/** A mark may have any name, that of a method of objects too. */
const WHEEL_NAMES: ReadonlyMap<string, string> = new Map([
  ["wheelCenter", "wheel center"],
  ["contactPatch", "floor under the wheel center"],
  ["rimTop", "top of the rim's edge"],
  ["rimBottom", "bottom of the rim's edge"],
  ["rimFront", "front of the rim's edge"],
  ["rimRear", "rear of the rim's edge"],
  ["tieRodOuter", "outer tie rod end"],
]);

const SIZE_NAMES: Readonly<Record<ReadingSize, string>> = {
  wheelbase: "wheelbase",
  track: "track, tread center to tread center on the floor",
  frameWidth: "frame, outer face to outer face",
  "tire.diameter": "tire, overall diameter",
  "tire.sectionWidth": "tire, section width",
  "tire.treadWidth": "tire, tread width",
  "tire.shoulderDrop": "tire, drop from crown to tread edge",
  "wheel.backspacing": "wheel, backspacing",
  "wheel.lipToLip": "wheel, lip to lip",
};

/** What a person calls a point, inside a sentence: `lower ball joint`, `fender lip, point 4`, `mark A`. */
export function pointWords(point: PointName): string {
  const wheel = WHEEL_NAMES.get(point);
  if (wheel !== undefined) return wheel;
  const part = bodyPointOf(point);
  if (part !== null) {
    if (part.at !== null) return `${part.part}, point ${part.at + 1}`;
    return `${part.part}, ${part.key === "min" ? "lowest corner" : "highest corner"}`;
  }
  const keys = point.split(".");
  if (keys.length === 1) return `mark ${point}`;
  const label = fieldLabel(["truck", ...keys], "");
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** What a person calls a size, inside a sentence. */
export function sizeWords(size: ReadingSize): string {
  return SIZE_NAMES[size];
}

/** What a reading is of, inside a sentence: `lower ball joint, height above the floor`. Takes readings too. */
export function readingWords(reading: Ask): string {
  const side = reading.side === "right" ? ", right side" : "";
  return `${plainName(reading)}${side}`;
}

/** The same in a line of a table. */
export function readingName(reading: Ask): string {
  return upper(readingWords(reading));
}

function plainName(reading: Ask): string {
  switch (reading.kind) {
    case "between": {
      const [a, b] = reading.points.map(pointWords);
      if (reading.side !== "across") return `${a} to ${b}`;
      return a === b ? `${a}, left to right` : `left ${a} to right ${b}`;
    }
    case "height":
      return `${pointWords(reading.point)}, height above the floor`;
    case "offset":
      return `${pointWords(reading.point)}, out from ${reading.from === "frame" ? "the frame's outer face" : "the centerline"}`;
    case "ahead":
      return `${pointWords(reading.point)}, ahead of the axle line`;
    case "angle":
      return `${reading.arm === "lowerArm" ? "lower" : "upper"} arm, angle in the front view`;
    case "size":
      return sizeWords(reading.of);
    case "plumb":
      return `plumb bob from ${pointWords(reading.point)} to ${pointWords(reading.mark)}`;
    case "stations":
      return `${reading.part}, ${reading.stations.filter(Boolean).length} stations along a stick`;
  }
}

/** What a reading or its residual reads, with its unit. @param value mm, or radians of an angle */
export function readText(kind: Ask["kind"], value: number, format: LengthFormat): string {
  return kind === "angle" ? angleText(value) : lengthText(value, format);
}

/** The same with its sign, for what is off. */
export function offText(kind: Ask["kind"], value: number, format: LengthFormat): string {
  const fine: LengthFormat =
    format.units === "in" ? { units: "in", fraction: "decimal", decimals: 3 } : { units: "mm", decimals: 1 };
  const text =
    kind === "angle" ? `${Math.abs(degFromRad(value)).toFixed(2)}°` : lengthText(Math.abs(value), fine);
  if (!/[1-9]/.test(text)) return text;
  return `${value < 0 ? "−" : "+"}${text}`;
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
