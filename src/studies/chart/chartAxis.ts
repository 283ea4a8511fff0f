import { fieldAt } from "../../setup/fieldCatalogue.ts";
import type { SetupField } from "../../setup/fields/setupField.ts";
import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { type KeyPath, keyText, parseKeyText, valueAt } from "../../setup/types/keyPath.ts";
import type { Result, Setup } from "../../setup/types/types.ts";
import type { Change } from "../window/truckOverField.ts";
import { ofOtherTire, otherWay } from "../window/windowField.ts";
import type { AxisEntry } from "./chartTypes.ts";

/** What of a setup an axis runs over. */
export interface AxisPlace {
  readonly path: KeyPath;
  /** The field; null = a whole block, such as the tire, of which each entry gives its keys. */
  readonly field: SetupField | null;
}

/** Blocks of which lists are kept. An entry tells a whole tire or wheel: what it leaves out of these is not that of the one before. */
const BLOCKS: Readonly<Record<string, readonly Whole[]>> = {
  tire: [{ with: [], gone: ["size", "diameter", "sectionWidth", "treadWidth", "profile", "loadedRadius"] }],
  wheel: [
    { with: ["rimDiameter", "rimWidth"], gone: ["barrelDiameter", "center"] },
    { with: ["backspacing", "offset"], gone: ["backspacing", "offset"] },
  ],
};

/** Keys that go once an entry gives one of some, or any where none are named. */
interface Whole {
  readonly with: readonly string[];
  readonly gone: readonly string[];
}

/** Kinds of fields that hold one value. */
const SINGLE: ReadonlySet<SetupField["kind"]> = new Set([
  "length",
  "signedLength",
  "angle",
  "number",
  "quantity",
  "choice",
  "text",
]);

/** What an axis may run over, at a key such as `wheel.backspacing` or `tire`. @param document with the variant shown applied */
export function axisPlace(key: string, document: unknown, file: string): Result<AxisPlace> {
  const refuse = (mend: string): Result<never> => ({ ok: false, issues: [{ file, key, value: "", mend }] });
  const path = parseKeyText(key);
  if (path === null || path.length === 0)
    return refuse("there is no such field; name one such as wheel.backspacing or tire.size");
  if (Object.hasOwn(BLOCKS, key)) return { ok: true, value: { path, field: null } };
  const field = fieldAt(path, document);
  if (field === null)
    return refuse("there is no such field; name one such as wheel.backspacing or tire.size");
  if (!SINGLE.has(field.kind))
    return refuse("holds no single value; name one of its fields, or tire or wheel for a list of these");
  const inPart = path[0] === "truck" && path[1] === "body";
  if (inPart && valueAt(document, [...path.slice(0, 3), "kind"]) === "mesh")
    return refuse("is part of a mesh, which is not moved about; name a field of a path or a box");
  return { ok: true, value: { path, field } };
}

/** What an entry of an axis writes into the setup. */
export function entryChange({ path, field }: AxisPlace, { typed }: AxisEntry, setup: Setup): Change {
  if (field === null) return { path, put: (document) => withBlock(document, path, typed) };
  const prepare = otherWay(path, setup);
  const put = (document: unknown) => {
    const isSame = valueAt(document, path) === typed;
    const prepared = prepare(document);
    return setAt(isSame ? prepared : ofOtherTire(keyText(path), prepared), path, typed);
  };
  return { path, put };
}

/** A document with the keys of one block as an entry gives them. */
function withBlock(document: unknown, path: KeyPath, typed: unknown): unknown {
  const given = Object.entries((typed ?? {}) as Record<string, unknown>);
  const gone = BLOCKS[keyText(path)]!.flatMap((whole) =>
    whole.with.length === 0 || given.some(([key]) => whole.with.includes(key)) ? whole.gone : [],
  );
  const cleared = gone.reduce((on, key) => removeAt(on, [...path, key]), document);
  return given.reduce((on, [key, value]) => setAt(on, [...path, key], value), cleared);
}
