import { readFileSync } from "node:fs";
import { join } from "node:path";
import { setAt } from "../../../src/setup/reading/setAt.ts";
import { resolveSetup } from "../../../src/setup/resolveSetup.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";
import { type Model, modelOf } from "../../../src/studies/model/model.ts";

/** What no check looks at, and stances, which a slip can put out of reach. */
const LEFT_OUT = new Set(["variants", "hardware", "stances", "alignment", "adjusters", "fromExample"]);

/** The half-ton in inches, the rest of it. */
export const halfTon: object = readExample("half-ton-on-air.json");
/** The compact in mm, likewise. */
export const compact: object = readExample("compact-front-steer.json");
/** A knuckle on order, with its build, loads and readings. */
export const onOrder: object = readExample("ordered-knuckle.json");

function readExample(name: string): object {
  const file = join(import.meta.dirname, "..", "..", "..", "shared", name);
  const document = JSON.parse(readFileSync(file, "utf8")) as Record<string, unknown>;
  return Object.fromEntries(Object.entries(document).filter(([key]) => !LEFT_OUT.has(key)));
}

export type Change = readonly [KeyPath, unknown];

/** A document with some values typed otherwise. */
export function changed(document: object, ...changes: readonly Change[]): object {
  return changes.reduce<object>((now, [path, value]) => setAt(now, path, value) as object, document);
}

/** The truck of a document. */
export function modelFrom(document: object, variant: string | null = null): Model {
  const setup = resolveSetup(document, "test.json", variant);
  if (!setup.ok) throw new Error(setup.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  const built = modelOf(setup.value, "test.json");
  if (!built.ok) throw new Error(built.issues.map(({ key, mend }) => `${key}: ${mend}`).join("; "));
  return built.value;
}

/** Every length of a document's measured blocks times a factor: the numbers as another unit would have them. */
export function scaled(document: object, factor: number): object {
  const turn = (value: unknown, key: string): unknown => {
    if (typeof value === "number") return ANGLES.has(key) ? value : value * factor;
    if (Array.isArray(value)) return value.map((one) => turn(one, key));
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, turn(one, name)]));
  };
  const { truck, knuckle } = document as { truck: object; knuckle: object };
  return { ...document, truck: turn(truck, ""), knuckle: turn(knuckle, "") };
}

const ANGLES = new Set(["pinAngle", "swing", "axis", "triangles"]);
