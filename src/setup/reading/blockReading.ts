import { parseAngle } from "../../units/angle.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseQuantity, type Quantity } from "../../units/quantity.ts";
import type { KeyPath } from "../types/keyPath.ts";
import { KnownParts } from "../types/knownParts.ts";
import type { MeshUnit, Point } from "../types/truckTypes.ts";
import type { LengthUnit } from "../types/types.ts";
import type { IssueList } from "./issueList.ts";
import { MAX_LENGTH, MIN_SIZE } from "./limits.ts";

/** A length as typed. */
export type LengthAsTyped = number | string;

/** A point as typed. */
export type PointAsTyped = readonly [LengthAsTyped, LengthAsTyped, LengthAsTyped];

/** A mesh read from its own file, in that file's own unit and axes. */
export interface LoadedMesh {
  /** x, y, z of each vertex. */
  readonly positions: Float64Array;
  /** Three vertex numbers a triangle. */
  readonly triangles: Uint32Array;
  /** The unit the file's format fixes; null = it fixes none, so the setup has to tell. */
  readonly unit: MeshUnit | null;
}

/** A mesh file that gave no mesh. */
export interface RefusedMesh {
  /** What is wrong and what would be right, one sentence without a full stop. */
  readonly refused: string;
}

/** Where a setup's meshes come from (a Map will do): `get` takes the `file` text as typed; undefined = there is none. */
export interface LoadedMeshes {
  get(file: string): LoadedMesh | RefusedMesh | undefined;
  /** Whether it sees to it itself what may be read; else a path that leaves the setup's folder is not asked for. */
  readonly guardsFolder?: boolean;
}

/**
 * One block while it is turned into millimeters and radians: knows the file's units and where in the document
 * it stands, and takes its issues. Only handed fields whose shape is sound already.
 */
export class BlockReading {
  readonly units: LengthUnit;
  readonly #meshes: LoadedMeshes;
  /** Parts that need not be read again. */
  readonly known: KnownParts;
  readonly #issues: IssueList;
  readonly #path: KeyPath;

  constructor(
    units: LengthUnit,
    meshes: LoadedMeshes,
    issues: IssueList,
    path: KeyPath = [],
    known = new KnownParts(),
  ) {
    this.units = units;
    this.#meshes = meshes;
    this.known = known;
    this.#issues = issues;
    this.#path = path;
  }

  /** The reading of a block inside this one. */
  inside(...path: KeyPath): BlockReading {
    return new BlockReading(this.units, this.#meshes, this.#issues, [...this.#path, ...path], this.known);
  }

  /** Adds an issue at a key of this block. */
  issue(path: KeyPath, value: unknown, mend: string): void {
    this.#issues.add([...this.#path, ...path], value, mend);
  }

  /** Whether nothing is wrong so far at a key of this block, inside it or above it. */
  isSound(...path: KeyPath): boolean {
    return !this.#issues.touches([...this.#path, ...path]);
  }

  /** The mesh of a file; one that is not in the setup's folder is not asked for. */
  mesh(file: string): LoadedMesh | RefusedMesh {
    if (!this.#meshes.guardsFolder && leavesFolder(file)) return { refused: OUTSIDE_MEND };
    return this.#meshes.get(file) ?? { refused: NOT_THERE_MEND };
  }

  /** mm. Adds an issue for a length no truck has. */
  length(typed: LengthAsTyped, ...path: KeyPath): number {
    const length = parseLength(typed, this.units);
    if (!length.ok) throw new TypeError(`BlockReading.length: shape was not checked: ${length.mend}`);
    if (Math.abs(length.mm) > MAX_LENGTH)
      this.issue(path, typed, "is more than 100 m; check the number and its unit");
    return length.mm;
  }

  /** mm, as `length`; `otherwise` when nothing was typed. */
  lengthOr<T>(otherwise: T, typed: LengthAsTyped | undefined, ...path: KeyPath): number | T {
    return typed === undefined ? otherwise : this.length(typed, ...path);
  }

  /** mm, as `lengthOr`, of something solid. Adds an issue for what is too thin to have an inside. */
  sizeOr<T>(otherwise: T, typed: LengthAsTyped | undefined, ...path: KeyPath): number | T {
    if (typed === undefined) return otherwise;
    const size = this.length(typed, ...path);
    if (size < MIN_SIZE)
      this.issue(path, typed, "is too thin for anything made; check the number and its unit");
    return size;
  }

  /** mm, vehicle axes unless the block has its own. */
  point(typed: PointAsTyped, ...path: KeyPath): Point {
    return [
      this.length(typed[0], ...path, 0),
      this.length(typed[1], ...path, 1),
      this.length(typed[2], ...path, 2),
    ];
  }

  /** kg, N, MPa, mm² or mm³, see `parseQuantity`. */
  quantity(typed: number | string, quantity: Quantity): number {
    const parsed = parseQuantity(typed, quantity, this.units);
    if (!parsed.ok) throw new TypeError(`BlockReading.quantity: shape was not checked: ${parsed.mend}`);
    return parsed.value;
  }

  /** rad. */
  angle(typed: number | string): number {
    const angle = parseAngle(typed);
    if (!angle.ok) throw new TypeError(`BlockReading.angle: shape was not checked: ${angle.mend}`);
    return angle.rad;
  }
}

const NOT_THERE_MEND = "this mesh file was not handed over; read it together with the setup";
const OUTSIDE_MEND =
  "a mesh file lies beside the setup or in a folder there; write its path from the setup, with / between folders";

/** Whether a path does not stay in the setup's folder: a setup from elsewhere must not make us read any file it likes. */
export function leavesFolder(path: string): boolean {
  return /^\/|^[a-z]+:|\\/i.test(path) || path.split("/").includes("..");
}
