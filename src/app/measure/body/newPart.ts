import { type FileUnits, MM_PER_INCH, mmFromInches } from "../../../units/lengthUnits.ts";
import { tapeText } from "../../../units/plainLengthText.ts";
import { freeName } from "../../state/freeName.ts";
import type { Truck } from "../../state/truck.ts";
import { tireCircle } from "./archGeometry.ts";

/** mm. Room between the tire and an arch to start from: clear of it straight ahead, and near enough to be seen. */
const ARCH_ROOM = mmFromInches(2.5);

/** Degrees from straight up at which an arch to start from has its points. */
const ARCH_DEG = [-75, -50, -25, 0, 25, 50, 75] as const;

/** A wheel arch to start from, as the file holds it: over the left tire, in the plane of its outer sidewall. */
export function newPath(truck: Truck, names: readonly string[], units: FileUnits): object {
  const { x, z, y, radius } = tireCircle(truck);
  const text = (mm: number) => tapeText(mm, units);
  const lipY = y + truck.model.tire.sectionWidth / 2;
  const points = ARCH_DEG.map((deg) => {
    const turn = (deg / 180) * Math.PI;
    const reach = radius + ARCH_ROOM;
    return [text(x - reach * Math.sin(turn)), text(lipY), text(z + reach * Math.cos(turn))];
  });
  return { name: freeName("arch", names), kind: "path", radius: text(MM_PER_INCH / 8), points };
}

/** A box to start from, as the file holds it: inboard of the left tire, at the height of its top. */
export function newBox(truck: Truck, names: readonly string[], units: FileUnits): object {
  const { x, y, z, radius } = tireCircle(truck);
  const text = (mm: number) => tapeText(mm, units);
  const outerY = y - truck.model.tire.sectionWidth / 2 - ARCH_ROOM;
  const half = mmFromInches(3);
  const top = z + radius;
  return {
    name: freeName("box", names),
    kind: "box",
    min: [text(x - half), text(outerY - 2 * half), text(top - half)],
    max: [text(x + half), text(outerY), text(top + half)],
  };
}
