import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { degFromRad } from "../../../units/angle.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { Truck } from "../../state/truck.ts";

/** Angles among the numbers of a resolved setup, by key; the others are lengths. */
const ANGLES: readonly string[] = ["toe", "pinAngle", "swing"];

/**
 * What holds while a field is left out, as the file would write it: a number of degrees, or a length as text with its unit
 * where it is not the file's. null = nothing does, or nobody can say.
 */
export function heldValue(truck: Truck | null, path: KeyPath, fileUnits: FileUnits): string | number | null {
  if (!truck) return null;
  const held = heldNumber(truck, path);
  if (held === null) return null;
  if (ANGLES.includes(String(path.at(-1)))) return Number(degFromRad(held).toFixed(6));
  // A default that follows from others is no round number: told to a tenth of a micrometer.
  return plainLengthText(Math.round(held * 1e4) / 1e4, fileUnits);
}

function heldNumber(truck: Truck, path: KeyPath): number | null {
  if (path[0] === "tire" && path[1] === "loadedRadius") return truck.model.tire.loadedRadius;
  const value = valueAt(truck.setup, path);
  return typeof value === "number" ? value : null;
}
