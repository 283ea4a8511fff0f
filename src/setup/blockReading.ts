import { parseAngle } from "../units/parseAngle.ts";
import { parseLength } from "../units/parseLength.ts";
import type { IssueList } from "./issueList.ts";
import type { KeyPath } from "./keyPath.ts";
import { MAX_LENGTH } from "./limits.ts";
import type { LengthUnit, Point } from "./types.ts";

/** A length as typed. */
export type LengthAsTyped = number | string;

/** A point as typed. */
export type PointAsTyped = readonly [LengthAsTyped, LengthAsTyped, LengthAsTyped];

/** A mesh read from its own file: vertices in that file's own unit and axes. */
export interface LoadedMesh {
  readonly vertices: readonly Point[];
  readonly triangles: readonly (readonly [number, number, number])[];
}

/** Meshes by the `file` text a setup names them with. */
export type LoadedMeshes = ReadonlyMap<string, LoadedMesh>;

/**
 * One block while it is turned into millimeters and radians: knows the file's units and where in the document
 * it stands, and takes its issues. Only handed fields whose shape is sound already.
 */
export class BlockReading {
  readonly units: LengthUnit;
  readonly meshes: LoadedMeshes;
  readonly #issues: IssueList;
  readonly #path: KeyPath;

  constructor(units: LengthUnit, meshes: LoadedMeshes, issues: IssueList, path: KeyPath = []) {
    this.units = units;
    this.meshes = meshes;
    this.#issues = issues;
    this.#path = path;
  }

  /** The reading of a block inside this one. */
  inside(...path: KeyPath): BlockReading {
    return new BlockReading(this.units, this.meshes, this.#issues, [...this.#path, ...path]);
  }

  /** Adds an issue at a key of this block. */
  issue(path: KeyPath, value: unknown, mend: string): void {
    this.#issues.add([...this.#path, ...path], value, mend);
  }

  /** Whether nothing is wrong so far at a key of this block, inside it or above it. */
  isSound(...path: KeyPath): boolean {
    return !this.#issues.touches([...this.#path, ...path]);
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

  /** mm, vehicle axes unless the block has its own. */
  point(typed: PointAsTyped, ...path: KeyPath): Point {
    return [
      this.length(typed[0], ...path, 0),
      this.length(typed[1], ...path, 1),
      this.length(typed[2], ...path, 2),
    ];
  }

  /** rad. */
  angle(typed: number | string): number {
    const angle = parseAngle(typed);
    if (!angle.ok) throw new TypeError(`BlockReading.angle: shape was not checked: ${angle.mend}`);
    return angle.rad;
  }
}
