import { addScaled, length, sub, type Vec3 } from "../../geometry/vec.ts";
import { mmPerMeshUnit } from "../../setup/blocks/meshPlace.ts";
import { lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { MeshUnit } from "../../setup/types/truckTypes.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { type MatchedPoint, type ScanPlacing, scanOnPoints, turned } from "../measure/scanOnPoints.ts";

/** The unit a part's mesh file is read in. @param part where the body part stands */
export function meshUnitOf(document: unknown, part: KeyPath, units: LengthUnit): MeshUnit {
  const isGlb = /\.glb$/i.test(String(valueAt(document, [...part, "file"])));
  return (valueAt(document, [...part, "unit"]) as MeshUnit | undefined) ?? (isGlb ? "m" : units);
}

/** mm in one of the numbers of a part's mesh file: of its unit, with the factor on top. @param part where the body part stands */
export function mmPerScan(document: unknown, part: KeyPath, units: LengthUnit): number {
  const scale = Number(valueAt(document, [...part, "place", "scale"]) ?? 1);
  return mmPerMeshUnit(meshUnitOf(document, part, units)) * scale;
}

/**
 * Points of a scan and the same on the truck, mm: those its `place` has as `from` and `to`, or as `matched`; null for a pair
 * that is not all there or does not read.
 * @param part where the body part with its `file` and `place` stands
 */
export function matchesOf(
  document: unknown,
  part: KeyPath,
  units: LengthUnit,
): readonly (MatchedPoint | null)[] {
  const of = (...keys: KeyPath) => valueAt(document, [...part, "place", ...keys]);
  const [from, matched] = [of("from"), of("matched")];
  const pairs: readonly (readonly [KeyPath, KeyPath])[] = Array.isArray(from)
    ? from.map(
        (_, i) =>
          [
            ["from", i],
            ["to", i],
          ] as const,
      )
    : Array.isArray(matched)
      ? matched.map(
          (_, i) =>
            [
              ["matched", i, "inMesh"],
              ["matched", i, "onTruck"],
            ] as const,
        )
      : [];
  const factor = mmPerScan(document, part, units);
  return pairs.map(([mesh, truck]) => {
    const inScan = [0, 1, 2].map((axis) => Number(of(...mesh, axis) ?? Number.NaN) * factor);
    const onTruck = [0, 1, 2].map((axis) => lengthAt(document, [...part, "place", ...truck, axis], units));
    const isWhole = inScan.every(Number.isFinite) && !onTruck.includes(null);
    return isWhole ? { inScan: inScan as unknown as Vec3, onTruck: onTruck as unknown as Vec3 } : null;
  });
}

/**
 * How far each matched point of a scan comes out from its place on the truck when they are fitted by least squares, mm; null =
 * they are not all there or in line.
 * @param part where the body part with its `file` and `place` stands
 */
export function scanFit(document: unknown, part: KeyPath, units: LengthUnit): readonly number[] | null {
  const matched = matchesOf(document, part, units);
  const whole = matched.filter((one) => one !== null);
  if (whole.length < matched.length) return null;
  const fit = scanOnPoints(whole);
  return fit.ok ? fit.placing.residuals : null;
}

/** How far a scan's point, as the scan stands now, lies from its place on the truck, mm. */
export function matchOff({ turn, move }: Standing, { inScan, onTruck }: MatchedPoint): number {
  return length(sub(placed({ turn, move }, inScan), onTruck));
}

/** Where a scan's point stands, vehicle axes, mm. @param inScan mm */
export function placed({ turn, move }: Pick<Standing, "turn" | "move">, inScan: Vec3): Vec3 {
  return addScaled(turned(turn, inScan), move, 1);
}

/** Where a scan stands: a point p of it, in mm, at turn · p + move. */
export type Standing = Pick<ScanPlacing, "turn" | "turnDegrees" | "move">;

/** Points that tell how a mesh stands: as many as make their roundings cancel. */
const SAMPLES = 200;

/**
 * Where a mesh stands, told by where its vertices came to.
 * @param raw vertices as the file has them; @param stood the same, vehicle axes, mm; @param mmPer one unit of the file
 * @returns null where all of them are in line
 */
export function standingOf(raw: Float64Array, stood: Float64Array, mmPer: number): Standing | null {
  const step = 3 * Math.max(1, Math.floor(raw.length / 3 / SAMPLES));
  const matched: MatchedPoint[] = [];
  for (let i = 0; i + 2 < raw.length; i += step)
    matched.push({
      inScan: [raw[i]! * mmPer, raw[i + 1]! * mmPer, raw[i + 2]! * mmPer],
      onTruck: [stood[i]!, stood[i + 1]!, stood[i + 2]!],
    });
  const fit = scanOnPoints(matched);
  return fit.ok ? fit.placing : null;
}
