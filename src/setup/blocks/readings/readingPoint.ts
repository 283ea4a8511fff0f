import { nearestWord } from "../../../units/words.ts";
import { MAX_ENTRIES, MAX_NAME } from "../../reading/limits.ts";
import { type KeyPath, parseKeyText, valueAt } from "../../types/keyPath.ts";
import { type PointName, WHEEL_POINTS } from "../../types/readingTypes.ts";

/** Places of the truck that hold a point, body parts aside. */
export const TRUCK_POINTS = [
  "upperArm.frontPivot",
  "upperArm.rearPivot",
  "upperArm.ballJoint",
  "lowerArm.frontPivot",
  "lowerArm.rearPivot",
  "lowerArm.ballJoint",
  "steering.innerEnd",
  "steering.pitman.pivot",
  "steering.pitman.end",
  "steering.idler.pivot",
  "steering.idler.end",
] as const;

const KNOWN: readonly string[] = [...TRUCK_POINTS, ...WHEEL_POINTS];

/** A point as typed in its one spelling, or what is wrong with it (no full stop). */
export type ReadPoint =
  | { readonly ok: true; readonly name: PointName }
  | { readonly ok: false; readonly mend: string };

/** What is said of a point that is none. */
export const POINT_MEND =
  'must name a point: a place of the setup such as "lowerArm.ballJoint", "wheelCenter", or a mark of your own such as "A"';

/**
 * Reads the name of a point. What has a dot or a bracket is a place of the setup; any other word is a mark, unless it is
 * nearly a known point.
 * @param bodyNames names of the body parts that the setup has
 */
export function readPoint(typed: string, bodyNames: readonly string[]): ReadPoint {
  const text = typed.trim();
  if (text === "" || text.length > MAX_NAME + 40 || /\p{Cc}/u.test(text))
    return { ok: false, mend: POINT_MEND };
  const short = text.startsWith("truck.") ? text.slice("truck.".length) : text;
  if (KNOWN.includes(short)) return { ok: true, name: short };
  if (short.startsWith("body[") || short.startsWith("body.")) return readBodyPoint(short, bodyNames);
  const near = nearestWord(short, KNOWN);
  if (near !== null) return { ok: false, mend: `is no point that is known; did you mean "${near}"?` };
  if (/[.[\]"]/.test(short))
    return { ok: false, mend: `${POINT_MEND}; a mark has no dots or brackets in its name` };
  return { ok: true, name: short };
}

/** Whether a name is a mark's: no place of the setup, no point of the wheel. */
export function isMark(name: PointName): boolean {
  return !KNOWN.includes(name) && !name.startsWith("body[");
}

/** Names of the body parts a document has, by position; "" where one has none. */
export function bodyNamesOf(document: unknown): readonly string[] {
  const body = valueAt(document, ["truck", "body"]);
  if (!Array.isArray(body)) return [];
  return body.map((part) => {
    const name = valueAt(part, ["name"]);
    return typeof name === "string" ? name : "";
  });
}

const BODY_EXAMPLE = 'write a point of a body part as body["fender lip"].points[3]';

function readBodyPoint(text: string, bodyNames: readonly string[]): ReadPoint {
  const path = keyPathOf(text);
  if (path === null) return { ok: false, mend: BODY_EXAMPLE };
  const [, part, key, at, ...rest] = path;
  const name = typeof part === "number" ? bodyNames[part] : part;
  if (name === undefined || name === "")
    return { ok: false, mend: `names a body part that is not there; ${BODY_EXAMPLE}` };
  const isPoint =
    rest.length === 0 &&
    (key === "points" ? typeof at === "number" : (key === "min" || key === "max") && at === undefined);
  if (!isPoint) return { ok: false, mend: BODY_EXAMPLE };
  if (typeof at === "number" && at >= MAX_ENTRIES)
    return { ok: false, mend: `a part has at most ${MAX_ENTRIES} points` };
  if (bodyNames.length > 0 && !bodyNames.includes(name)) {
    const near = nearestWord(name.slice(0, MAX_NAME), bodyNames);
    if (near !== null) return { ok: false, mend: `no part is called that; did you mean body["${near}"]?` };
  }
  return { ok: true, name: typeof at === "number" ? bodyPointName(name, at) : `${bodyStart(name)}.${key}` };
}

function keyPathOf(text: string): KeyPath | null {
  try {
    return parseKeyText(text);
  } catch {
    return null; // a quoted name that JSON cannot read
  }
}

/** The name of a body part's point. */
export function bodyPointName(part: string, at: number): PointName {
  return `${bodyStart(part)}.points[${at}]`;
}

function bodyStart(part: string): string {
  return `body[${JSON.stringify(part)}]`;
}

/** Which body part's which point a name is; null = of none. */
export function bodyPointOf(
  name: PointName,
): { readonly part: string; readonly key: string; readonly at: number | null } | null {
  const path = name.startsWith("body[") ? parseKeyText(name) : null;
  if (path === null) return null;
  const [, part, key, at] = path;
  return { part: String(part), key: String(key), at: typeof at === "number" ? at : null };
}
