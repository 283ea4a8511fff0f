import { type KeyPath, keyText } from "./types/keyPath.ts";
import type { LengthUnit, SetupIssue } from "./types/types.ts";

const EMPTY = "";
const POINT = [EMPTY, EMPTY, EMPTY] as const;
const ARM = { frontPivot: POINT, rearPivot: POINT, ballJoint: POINT };

/** A truck of which nothing is measured yet: every number that an answer needs is there, and empty. */
export function newTruckDocument(units: LengthUnit): Readonly<Record<string, unknown>> {
  return {
    format: "wellsweep-setup",
    version: 1,
    name: "New truck",
    units,
    truck: {
      upperArm: ARM,
      lowerArm: ARM,
      steering: emptySteering("rack"),
      body: [],
    },
    knuckle: {
      span: EMPTY,
      pinHeight: EMPTY,
      pinAngle: EMPTY,
      hubFace: EMPTY,
      steeringArm: POINT,
    },
    wheel: { rimDiameter: EMPTY, rimWidth: EMPTY, backspacing: EMPTY },
    tire: { size: EMPTY },
    travel: { bump: EMPTY, droop: EMPTY },
  };
}

/** A steering linkage of which nothing is measured yet. */
export function emptySteering(type: "rack" | "pitman"): object {
  if (type === "rack") return { type, innerEnd: POINT, stroke: EMPTY };
  const arm = { pivot: POINT, end: POINT };
  return { type, innerEnd: POINT, swing: EMPTY, pitman: arm, idler: arm };
}

/** The order in which a truck is measured; what is not here comes after. */
const ORDER: readonly string[] = ["truck", "knuckle", "wheel", "tire", "travel"];

/**
 * The fields of a document that are still empty, in the order in which a truck is measured; a point is one field, whatever
 * of it is missing.
 */
export function neededFields(document: unknown): readonly KeyPath[] {
  const found = emptyPlaces(document, []);
  const rank = (path: KeyPath) => {
    const at = ORDER.indexOf(String(path[0]));
    return at < 0 ? ORDER.length : at;
  };
  return [...found].sort((a, b) => rank(a) - rank(b));
}

/** The issues that are no news: a field that is needed is empty. */
export function withoutNeeded(
  issues: readonly SetupIssue[],
  needed: readonly KeyPath[],
): readonly SetupIssue[] {
  const keys = needed.map(keyText);
  return issues.filter(
    ({ key, value }) => value !== '""' || !keys.some((one) => key === one || key.startsWith(`${one}[`)),
  );
}

function emptyPlaces(value: unknown, at: KeyPath): readonly KeyPath[] {
  if (value === EMPTY) return [at];
  if (Array.isArray(value)) {
    if (value.includes(EMPTY)) return [at];
    return value.flatMap((entry, i) => emptyPlaces(entry, [...at, i]));
  }
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) =>
    at.length === 0 && key === "variants" ? [] : emptyPlaces(entry, [...at, key]),
  );
}
