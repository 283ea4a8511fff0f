import type { Vec3 } from "../../geometry/vec.ts";
import { readReadings } from "../../setup/readReadings.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { LIP, LIP_STATIONS } from "../../setup/worksheet/worksheetLines.ts";
import { parseLength } from "../../units/parseLength.ts";
import { tapeText } from "../../units/plainLengthText.ts";
import { archFromPhoto, type LipOffset } from "../measure/archFromPhoto.ts";
import { ASSUMED_LIP_POINTS } from "../measure/assumedTruck.ts";
import { type KnownPixel, type Pixel, photoPlane } from "../measure/photoPlane.ts";
import type { ReadingDocument } from "./gaugeReadings.ts";

/** A place in a photo whose place on the truck is told, as typed. */
export interface TypedKnown {
  readonly pixel: Pixel | null;
  /** Ahead of the axle line, and up from the floor. */
  readonly ahead: string;
  readonly up: string;
}

/** What a photo tells so far. */
export type PhotoRead =
  | {
      readonly ok: true;
      /** A fender lip as stations, as the file holds a reading. */
      readonly reading: ReadingDocument;
      /** Stations that the traced line reaches. */
      readonly stations: number;
      /** mm. */
      readonly within: number;
      readonly mmPerPixel: number;
      /** mm: how far the known points come out at worst; null = none is to spare. */
      readonly worst: number | null;
    }
  /** One sentence without a full stop: what is missing or wrong, and how to mend it. */
  | { readonly ok: false; readonly mend: string };

/** mm, one standard deviation of an arch traced by hand, at best; a guess. */
const TRACED_WITHIN = 6.35;

/** Pixels that a tap is off. */
const TAP = 2;

/**
 * The fender lip traced in a photo of the left side, as a reading at the stations of the assumed lip: ahead and up from the
 * photo, out from where the lip was read with a tape.
 * @param traced along the lip, px
 */
export function photoReading(
  document: unknown,
  units: LengthUnit,
  known: readonly TypedKnown[],
  traced: readonly Pixel[],
): PhotoRead {
  const placed = known.filter(({ pixel }) => pixel !== null);
  const points: KnownPixel[] = [];
  for (const [i, { pixel, ahead, up }] of placed.entries()) {
    const [x, z] = [parseLength(ahead, units), parseLength(up, units)];
    if (!x.ok) return { ok: false, mend: `known point ${i + 1}, ahead of the axle line: ${x.mend}` };
    if (!z.ok) return { ok: false, mend: `known point ${i + 1}, up from the floor: ${z.mend}` };
    points.push({ pixel: pixel!, at: [x.mm, z.mm] });
  }
  const placing = photoPlane(points, true);
  if (!placing.ok) return placing;
  const { plane } = placing;
  const arch = archFromPhoto(plane, traced, lipOffsets(document));
  if (!arch.ok) return arch;
  const worst = points.length > 4 ? Math.max(...plane.residuals) : null;
  const within = Math.max(TRACED_WITHIN, TAP * plane.mmPerPixel, worst ?? 0);
  const base = Math.max(...arch.points.map(([, y]) => y));
  const text = (mm: number) => tapeText(mm, units);
  const stations = [...ASSUMED_LIP_POINTS.values()].map(([ahead]) => {
    const at = onArch(arch.points, ahead);
    return at === null ? [text(ahead), "", ""] : [text(ahead), text(at[2]), text(base - at[1])];
  });
  const count = stations.filter(([, up]) => up !== "").length;
  if (count === 0)
    return {
      ok: false,
      mend: "the traced line passes none of the stations; trace the lip from its front to its rear",
    };
  const reading = {
    stations,
    part: LIP,
    stick: { offset: text(base), height: 0 },
    within: text(within),
  };
  return { ok: true, reading, stations: count, within, mmPerPixel: plane.mmPerPixel, worst };
}

/** Where the lip was read out from the centerline, with a tape or along a stick. */
function lipOffsets(document: unknown): readonly LipOffset[] {
  return readReadings(document, "").readings.flatMap((one): LipOffset[] => {
    if (one.kind === "stations" && one.part === LIP)
      return one.stations.flatMap((at) => (at ? [{ ahead: at[0], offset: one.stick.offset - at[2] }] : []));
    if (one.kind !== "offset" || one.from !== "centerline" || one.side !== "left") return [];
    const at = ASSUMED_LIP_POINTS.get(one.point);
    return at ? [{ ahead: at[0], offset: one.is }] : [];
  });
}

/** Where a traced line passes over a place along the truck, at its highest; null = nowhere. */
function onArch(points: readonly Vec3[], ahead: number): Vec3 | null {
  let best: Vec3 | null = null;
  points.slice(1).forEach((b, i) => {
    const a = points[i]!;
    const [near, far] = a[0] <= b[0] ? [a, b] : [b, a];
    if (ahead < near[0] || ahead > far[0] || near[0] === far[0]) return;
    const share = (ahead - near[0]) / (far[0] - near[0]);
    const at: Vec3 = [ahead, near[1] + share * (far[1] - near[1]), near[2] + share * (far[2] - near[2])];
    if (best === null || at[2] > best[2]) best = at;
  });
  return best;
}

/** What is known of any truck on its worksheet: the middle of the hub, and the lip over the axle; as typed, "" = not yet. */
export function firstKnown(document: unknown): readonly [TypedKnown, TypedKnown] {
  const height = (point: string) => {
    const list = valueAt(document, ["readings"]);
    const reading = Array.isArray(list) ? list.find((one) => valueAt(one, ["height"]) === point) : undefined;
    return String(valueAt(reading, ["is"] satisfies KeyPath) ?? "");
  };
  const lip = [...ASSUMED_LIP_POINTS.keys()][LIP_STATIONS.axle]!;
  return [
    { pixel: null, ahead: "0", up: height("wheelCenter") },
    { pixel: null, ahead: "0", up: height(lip) },
  ];
}
