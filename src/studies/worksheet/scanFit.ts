import type { Vec3 } from "../../geometry/vec.ts";
import { lengthAt } from "../../setup/reading/lengthAt.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit, MeshUnit } from "../../setup/types/types.ts";
import { type MatchedPoint, scanOnPoints } from "../measure/scanOnPoints.ts";

const MM: Readonly<Record<MeshUnit, number>> = { in: 25.4, mm: 1, cm: 10, m: 1000 };

/**
 * How far each matched point of a scan comes out from its place on the truck when they are fitted by least squares, mm; null =
 * they are not all there or in line.
 * @param part where the body part with its `file` and `place` stands
 */
export function scanFit(document: unknown, part: KeyPath, units: LengthUnit): readonly number[] | null {
  const of = (key: string) => valueAt(document, [...part, "place", key]);
  const [from, to] = [of("from"), of("to")];
  if (!Array.isArray(from) || !Array.isArray(to) || from.length !== to.length) return null;
  const isGlb = /\.glb$/i.test(String(valueAt(document, [...part, "file"])));
  const unit = (valueAt(document, [...part, "unit"]) as MeshUnit | undefined) ?? (isGlb ? "m" : units);
  const matched = from.flatMap((point: unknown, i): readonly MatchedPoint[] => {
    const inScan = [0, 1, 2].map((axis) => Number(valueAt(point, [axis])) * (MM[unit] ?? Number.NaN));
    const onTruck = [0, 1, 2].map((axis) => lengthAt(document, [...part, "place", "to", i, axis], units));
    const isWhole = inScan.every(Number.isFinite) && !onTruck.includes(null);
    return isWhole ? [{ inScan: inScan as unknown as Vec3, onTruck: onTruck as unknown as Vec3 }] : [];
  });
  if (matched.length < from.length) return null;
  const fit = scanOnPoints(matched);
  return fit.ok ? fit.placing.residuals : null;
}
