import * as z from "zod";
import { formatLength } from "../../units/formatLength.ts";
import { findLengthUnit } from "../../units/lengthUnits.ts";
import { block, list } from "../fields/blockFields.ts";
import { numbersField, pointField, tupleMend } from "../fields/fields.ts";
import type { BlockReading, LoadedMesh } from "../reading/blockReading.ts";
import { scaled } from "../reading/pointMath.ts";
import type { MeshUnit, Point } from "../types/truckTypes.ts";
import type { LengthUnit } from "../types/types.ts";
import {
  areNearlyInLine,
  type ThreePoints,
  turnBetween,
  type UnevenSide,
  unevenSide,
} from "./threePoints.ts";

/** Units a mesh file may be in. */
export const MESH_UNITS = ["in", "mm", "cm", "m", "ft"] as const satisfies readonly MeshUnit[];

/** A scan is placed by a handful of points. */
const MAX_MATCHED = 40;

const meshPoint = numbersField("a point of the mesh, in its own unit and axes", "three numbers, [x, y, z]");
const truckPoint = pointField("the same point on the truck, vehicle axes");

/** Where a mesh from a file stands on the truck, as typed. */
export const placeField = block(
  "where the mesh stands: scaled, turned about the file's origin and moved; or by three points, from and to",
  {
    scale: z
      .number({ error: "must be a number" })
      .positive({ error: "must be more than 0" })
      .meta({ description: "factor on top of the unit; default 1" })
      .optional(),
    turn: numbersField(
      "degrees about vehicle X, then Y, then Z, right-hand rule; [90, 0, 0] stands a Y-up file upright; default none",
      "three angles in degrees, [about x, about y, about z]",
    ).optional(),
    move: pointField("where the file's origin goes, vehicle axes; default [0, 0, 0]").optional(),
    from: z
      .tuple([meshPoint, meshPoint, meshPoint], {
        error: tupleMend("three points of the mesh", "three points of the mesh, [[x, y, z], …, …]"),
      })
      .meta({ description: "three points of the mesh, not in line, in its own unit and axes" })
      .optional(),
    to: z
      .tuple([truckPoint, truckPoint, truckPoint], {
        error: tupleMend("the same points on the truck", "three points on the truck, [[x, y, z], …, …]"),
      })
      .meta({
        description:
          "where those three are on the truck: the first exactly, the second in direction, the third in plane",
      })
      .optional(),
    matched: list(
      "points seen on both, to place the mesh by and to check it with; where it stands is said by turn and move",
      block("a point seen on both", {
        inMesh: meshPoint.optional(),
        onTruck: truckPoint.optional(),
      }),
      { most: MAX_MATCHED },
    ).optional(),
  },
  { dependentRequired: { from: ["to"], to: ["from"] } },
);

export type PlaceAsTyped = z.infer<typeof placeField>;

/** A turn and a move: p goes to turn·(p − center) + target. Rows of the turn; mm. */
interface Placing {
  readonly turn: readonly [Point, Point, Point];
  readonly center: Point;
  readonly target: Point;
}

/** A mesh file's positions in mm, vehicle axes. Null = an issue was added. */
export function placedPositions(
  mesh: LoadedMesh,
  unit: MeshUnit | undefined,
  place: PlaceAsTyped,
  reading: BlockReading,
): Float64Array | null {
  const fileUnit = unit ?? mesh.unit ?? reading.units;
  const isMatched = place.from !== undefined || place.to !== undefined;
  const placing = isMatched
    ? matchedPlacing(place, fileUnit, reading.inside("place"))
    : turnedPlacing(place, reading);
  for (const [i, { onTruck }] of (place.matched ?? []).entries())
    if (onTruck) reading.point(onTruck, "place", "matched", i, "onTruck");
  if (!placing) return null;
  const factor = mmPerMeshUnit(fileUnit) * (place.scale ?? 1);
  const { turn, center, target } = placing;
  const placed = new Float64Array(mesh.positions.length);
  for (let i = 0; i < placed.length; i += 3) {
    const x = mesh.positions[i]! * factor - center[0];
    const y = mesh.positions[i + 1]! * factor - center[1];
    const z = mesh.positions[i + 2]! * factor - center[2];
    for (let row = 0; row < 3; row++) {
      const [u, v, w] = turn[row]!;
      placed[i + row] = u * x + v * y + w * z + target[row]!;
    }
  }
  return placed;
}

/** mm in one of the units that a mesh may be in. */
export function mmPerMeshUnit(unit: MeshUnit): number {
  return findLengthUnit(unit)!.mm;
}

function turnedPlacing({ turn, move }: PlaceAsTyped, reading: BlockReading): Placing {
  const [aboutX, aboutY, aboutZ] = (turn ?? [0, 0, 0]).map((deg) => cosSin(reading.angle(deg)));
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map(([x, y, z]): Point => {
    const [y1, z1] = turned(aboutX!, y, z);
    const [z2, x2] = turned(aboutY!, z1, x);
    const [x3, y3] = turned(aboutZ!, x2, y1);
    return [x3, y3, z2];
  });
  const row = (i: 0 | 1 | 2): Point => [columns[0]![i], columns[1]![i], columns[2]![i]];
  const target = move ? reading.point(move, "place", "move") : ([0, 0, 0] as const);
  return { turn: [row(0), row(1), row(2)], center: [0, 0, 0], target };
}

/** Of an angle; quarter turns are exact. */
function cosSin(angle: number): readonly [cos: number, sin: number] {
  const quarters = angle / (Math.PI / 2);
  if (!Number.isInteger(quarters)) return [Math.cos(angle), Math.sin(angle)];
  const quarter = ((quarters % 4) + 4) % 4;
  return [[1, 0, -1, 0][quarter]!, [0, 1, 0, -1][quarter]!];
}

/** A turn in the plane. */
function turned([cos, sin]: readonly [number, number], u: number, v: number): readonly [number, number] {
  return [u * cos - v * sin, u * sin + v * cos];
}

/** @param reading of the place itself */
function matchedPlacing(place: PlaceAsTyped, fileUnit: MeshUnit, reading: BlockReading): Placing | null {
  const { from, to } = place;
  for (const key of ["scale", "turn", "move"] as const) {
    if (place[key] === undefined) continue;
    reading.issue(
      [key],
      place[key],
      "three matched points place the mesh whole; remove this, or from and to",
    );
  }
  if (!from || !to) {
    const [missing, present] = from ? ["to", "from"] : ["from", "to"];
    reading.issue(
      [missing!],
      undefined,
      `required with ${present}: the same three points, in the same order`,
    );
    return null;
  }
  const inMesh = from.map((point) => scaled(point, mmPerMeshUnit(fileUnit))) as unknown as ThreePoints;
  const onTruck = to.map((point, i) => reading.point(point, "to", i)) as unknown as ThreePoints;
  const uneven = unevenSide(inMesh, onTruck);
  const better = uneven && betterUnit(inMesh, onTruck, fileUnit);
  const inLine = "the three points are in line or too close; pick three that are far apart";
  if (areNearlyInLine(onTruck)) reading.issue(["to"], to, inLine);
  else if (areNearlyInLine(inMesh) && !better) reading.issue(["from"], from, inLine);
  else if (uneven) {
    const mend = better
      ? `with unit "${better}" all sides agree`
      : "check these points, their order and unit";
    reading.issue(["to"], to, `${unevenText(uneven, reading.units)}; ${mend}`);
  }
  if (!reading.isSound()) return null;
  return { turn: turnBetween(inMesh, onTruck), center: inMesh[0], target: onTruck[0] };
}

function unevenText({ ends, inMesh, onTruck }: UnevenSide, units: LengthUnit): string {
  // What is longer than any length that can be written is told as the longest.
  const text = (mm: number) => formatLength(Math.min(mm, 1e11), { units });
  const [a, b] = ends.map((end) => end + 1);
  return `points ${a} and ${b} are ${text(inMesh)} apart in the mesh but ${text(onTruck)} on the truck`;
}

/** The unit in which all sides would agree; undefined = none. */
function betterUnit(inMesh: ThreePoints, onTruck: ThreePoints, fileUnit: MeshUnit): MeshUnit | undefined {
  return MESH_UNITS.find((unit) => {
    const factor = mmPerMeshUnit(unit) / mmPerMeshUnit(fileUnit);
    const rescaled = inMesh.map((point) => scaled(point, factor)) as unknown as ThreePoints;
    return unevenSide(rescaled, onTruck) === null;
  });
}
