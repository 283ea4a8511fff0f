import { type KeyPath, valueAt } from "../types/keyPath.ts";
import type { SetupField } from "./setupField.ts";

/**
 * Where the three numbers of a point are counted from: the truck (floor, center plane, front axle line), the knuckle (lower
 * ball joint center, z up the steering axis), the hub (middle of the hub face), the seat of a brake rotor, or the mesh
 * file's own zero.
 */
export type Zero = "truck" | "knuckle" | "hub" | "seat" | "mesh";

/**
 * What a point is counted from. What the schema says of it decides; where it goes by another field, that field does.
 * @param document tells what a mount is on, and in which frame a caliper is
 * @returns null = no point, or one on a drawing of its own
 */
export function zeroOf(
  { kind, meaning, pattern }: SetupField,
  path: KeyPath,
  document: unknown,
): Zero | null {
  const keys = pattern.join(".");
  if (keys.includes(".place.from.") || keys.includes(".inMesh")) return "mesh";
  if (kind !== "point") return null;
  const beside = (key: string) => valueAt(document, [...path.slice(0, -1), key]);
  if (keys === "hardware.caliper.min" || keys === "hardware.caliper.max")
    return beside("frame") === "hub" ? "hub" : "knuckle";
  if (keys.startsWith("order.brake.")) return "seat";
  if (keys === "limits.shock.lowerMount") return beside("on") === "knuckle" ? "knuckle" : "truck";
  if (meaning.includes("knuckle frame")) return "knuckle";
  return meaning.includes("vehicle axes") || keys.startsWith("floor.") ? "truck" : null;
}
