import { useMemo } from "react";
import type { Vec3 } from "../../../geometry/vec.ts";
import { type KeyPath, keyText, valueAt } from "../../../setup/types/keyPath.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { pointInMm } from "../../measure/body/archGeometry.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf, type TypedDocument } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { useHandles } from "./handleStore.ts";
import { type Picture, type PicturePlane, planeSeen } from "./picturePlane.ts";

/** A point of the setup that can be moved in the picture. */
export interface StagePoint {
  readonly key: string;
  readonly name: string;
  readonly sort: "arm" | "body";
  /** As the file has it, mm. */
  readonly at: Vec3;
  /** Its coordinates as they stand in the file. */
  readonly typed: readonly unknown[];
  /** Where it stands, mm: a part of the right side alone may be given by its mirror image. */
  readonly seen: Vec3;
  /** The point of the setup that holds each coordinate: a corner of a box has them of two. */
  readonly homes: readonly [KeyPath, KeyPath, KeyPath];
  /** Between what each coordinate must stay, mm, ends left out. */
  readonly open: readonly (readonly [number, number])[];
}

const ANYWHERE = [-Infinity, Infinity] as const;
const ARM_POINTS = [
  ["frontPivot", "front pivot"],
  ["rearPivot", "rear pivot"],
  ["ballJoint", "ball joint, as measured"],
] as const;

/** What the least and the greatest value of an axis are called. */
const ENDS = [
  ["rear", "front"],
  ["inner", "outer"],
  ["lower", "upper"],
] as const;

/**
 * The points of arms, tie rod, paths and boxes, as typed; one that does not read is left out.
 * @param plane the boxes' corners are those of their outline in it
 * @param hidden names of parts that are not drawn
 */
export function stagePoints(
  document: TypedDocument | null,
  plane: PicturePlane,
  hidden: readonly string[],
): StagePoint[] {
  const units = fileUnitsOf(document);
  const lone = (path: KeyPath, name: string, sort: StagePoint["sort"], mirrored = false): StagePoint[] => {
    const at = pointInMm(valueAt(document, path), units);
    if (!at) return [];
    const typed = valueAt(document, path) as readonly unknown[];
    const open = [ANYWHERE, ANYWHERE, ANYWHERE];
    const homes = [path, path, path] as const;
    return [{ key: keyText(path), name, sort, at, typed, seen: seenAt(at, mirrored), homes, open }];
  };
  const arms = (["upperArm", "lowerArm"] as const).flatMap((arm) =>
    ARM_POINTS.flatMap(([key, word]) =>
      lone(["truck", arm, key], `${arm === "upperArm" ? "upper" : "lower"} arm, ${word}`, "arm"),
    ),
  );
  const rod = lone(["truck", "steering", "innerEnd"], "inner tie rod end", "arm");
  const body = valueAt(document, ["truck", "body"]);
  const parts = (Array.isArray(body) ? body : []).flatMap((part: unknown, i): StagePoint[] => {
    const path: KeyPath = ["truck", "body", i];
    const name = String(valueAt(part, ["name"]) ?? `part ${i + 1}`);
    if (hidden.includes(name)) return [];
    const mirrored = isMirrored(part, units);
    const points = valueAt(part, ["points"]);
    if (Array.isArray(points)) {
      const word = (k: number) => `${name}, point ${k + 1} of ${points.length}`;
      return points.flatMap((_, k) => lone([...path, "points", k], word(k), "body", mirrored));
    }
    return valueAt(part, ["kind"]) === "box" ? corners(part, path, name, plane, units, mirrored) : [];
  });
  return [...arms, ...rod, ...parts];
}

function corners(
  part: unknown,
  path: KeyPath,
  name: string,
  { across, along }: PicturePlane,
  units: FileUnits,
  mirrored: boolean,
): StagePoint[] {
  const ends = [pointInMm(valueAt(part, ["min"]), units), pointInMm(valueAt(part, ["max"]), units)] as const;
  const [min, max] = ends;
  if (!min || !max) return [];
  return [0, 1, 2, 3].map((k) => {
    const end = [0, 0, 0];
    end[across] = k % 2;
    end[along] = k >> 1;
    const at = end.map((e, axis) => ends[e]![axis]!) as [number, number, number];
    const home = (axis: number): KeyPath => [...path, end[axis] === 0 ? "min" : "max"];
    // The axis met first in vehicle order reads first: "front upper corner".
    const words = [across, along].sort().map((axis) => ENDS[axis]![end[axis]!]);
    return {
      key: `${keyText(path)} ${words.join(" ")}`,
      name: `${name}, ${words.join(" ")} corner`,
      sort: "body",
      at,
      typed: end.map((e, axis) => valueAt(part, [e === 0 ? "min" : "max", axis])),
      seen: seenAt(at, mirrored),
      homes: [home(0), home(1), home(2)],
      open: end.map((e, axis) => (e === 0 ? [-Infinity, max[axis]!] : [min[axis]!, Infinity])),
    };
  });
}

function seenAt(at: Vec3, mirrored: boolean): Vec3 {
  return mirrored ? [at[0], -at[1], at[2]] : at;
}

/** Whether a part of the right side alone is given by its mirror image on the left. */
function isMirrored(part: unknown, units: FileUnits): boolean {
  if (valueAt(part, ["side"]) !== "right") return false;
  const points = valueAt(part, ["points"]);
  const typed: readonly unknown[] = Array.isArray(points)
    ? points
    : [valueAt(part, ["min"]), valueAt(part, ["max"])];
  return typed.reduce<number>((sum, point) => sum + (pointInMm(point, units)?.[1] ?? 0), 0) >= 0;
}

interface SeenPoints {
  readonly picture: Picture | null;
  /** null where the truck is turned: there is no plane to move a point in. */
  readonly plane: PicturePlane | null;
  readonly points: readonly StagePoint[];
  /** The one pointed out. */
  readonly current: StagePoint | undefined;
}

/** The points of the setup that can be moved in the picture as it is seen now. */
export function useStagePoints(): SeenPoints {
  const picture = useHandles((s) => s.picture);
  const key = useHandles((s) => s.current);
  const document = useWorkbench(shownDocument);
  const hidden = useWorkbench((s) => s.hiddenParts);
  const plane = picture && planeSeen(picture);
  const points = useMemo(
    () => (plane ? stagePoints(document, plane, hidden) : []),
    [document, plane, hidden],
  );
  const current = points.find((point) => point.key === key) ?? points[0];
  return { picture, plane, points, current };
}
