import type * as z from "zod";
import { parseNumber } from "../units/parseNumber.ts";
import { hasWithin, splitWithin } from "../units/withinText.ts";
import { setupDocument } from "./document.ts";
import { schemaInside } from "./fieldCatalogue.ts";
import { numberNature } from "./fields/fieldKinds.ts";
import { unwrapped } from "./fields/setupField.ts";
import type { IssueList } from "./reading/issueList.ts";
import { pairOf, type TypedPair } from "./reading/typedPair.ts";
import { type NumberNature, withinOf } from "./reading/withinOf.ts";
import type { KeyPath } from "./types/keyPath.ts";
import { KnownParts, type TakenWithin } from "./types/knownParts.ts";
import type { NumberWithin } from "./types/withinTypes.ts";

/** A document whose numbers stand alone, and how well they are known. */
export interface PlainDocument {
  /** The very document where no uncertainty is typed; what is not on the way to one is shared with it. */
  readonly document: unknown;
  readonly within: readonly NumberWithin[];
}

/**
 * Takes the uncertainties off the numbers of a document, so that the blocks read numbers alone: `"5 5/8 ± 1/16"` and
 * `{ "value": "5 5/8", "within": "1/16" }` become `"5 5/8"`. Text that holds no number stays as it is. What is wrong with
 * an uncertainty becomes an issue at its number. Does not change the document.
 */
export function takeWithin(document: unknown, issues: IssueList, known: KnownParts): PlainDocument {
  const taken: Taken[] = [];
  const plain = take(setupDocument, document, [], taken, known);
  if (taken.length === 0) return { document: plain, within: [] };
  const units = (document as { readonly units?: unknown }).units === "mm" ? "mm" : "in";
  const within = taken.flatMap(({ path, typed, nature, pair, isOneText }): readonly NumberWithin[] => {
    const read =
      typeof pair === "string"
        ? { ok: false as const, mend: pair }
        : withinOf(pair, nature, units, isOneText);
    if (read.ok) return [{ path, kind: read.kind, within: read.within }];
    issues.add(path, typed, read.mend);
    return [];
  });
  return { document: plain, within };
}

/** An uncertainty as it stood at a path. */
interface Taken {
  readonly path: KeyPath;
  readonly nature: NumberNature;
  readonly typed: unknown;
  /** Taken apart; or what is wrong (one sentence without a full stop). */
  readonly pair: TypedPair | string;
  readonly isOneText: boolean;
}

/** A value without its uncertainties, which are added to `taken`; the very value where there are none. */
function take(schema: z.ZodType, value: unknown, path: KeyPath, taken: Taken[], known: KnownParts): unknown {
  if (typeof value === "string" && !hasWithin(value)) return value;
  if ((typeof value !== "string" && typeof value !== "object") || value === null) return value;
  const inner = unwrapped(schema);
  const nature = numberNature(inner);
  if (nature !== null) return takeNumber(nature, value, path, taken);
  if (typeof value === "string") return value;
  const isPart = path.length === 3 && path[0] === "truck" && path[1] === "body";
  if (!isPart) return takeInside(inner, value, path, taken, known);
  // A scan is walked once, not at every edit of something else.
  const ofPart = known.taken(value, (): TakenWithin<Taken> => {
    const found: Taken[] = [];
    return { plain: takeInside(inner, value, [], found, known), found };
  });
  for (const one of ofPart.found) taken.push({ ...one, path: [...path, ...one.path] });
  return ofPart.plain;
}

function takeInside(
  schema: z.ZodType,
  value: object,
  path: KeyPath,
  taken: Taken[],
  known: KnownParts,
): object {
  let changed: Record<string | number, unknown> | null = null;
  const look = (step: string | number, item: unknown) => {
    // Numbers that stand alone are most of a mesh.
    if (typeof item !== "string" && (typeof item !== "object" || item === null)) return;
    if (typeof item === "string" && !hasWithin(item)) return;
    const inside = schemaInside(schema, step, value);
    if (inside === null) return;
    const plain = take(inside, item, [...path, step], taken, known);
    if (plain === item) return;
    changed ??= (Array.isArray(value) ? [...value] : { ...value }) as Record<string | number, unknown>;
    changed[step] = plain;
  };
  if (Array.isArray(value)) for (let i = 0; i < value.length; i++) look(i, value[i]);
  else for (const [key, item] of Object.entries(value)) look(key, item);
  return changed ?? value;
}

function takeNumber(nature: NumberNature, typed: string | object, path: KeyPath, taken: Taken[]): unknown {
  if (typeof typed !== "string") {
    const pair = pairOf(typed);
    if (pair === null) return typed; // the field itself tells what is wrong with it
    taken.push({ path, nature, typed: `${pair.value} ± ${pair.within}`, pair, isOneText: false });
    return pair.value;
  }
  const split = splitWithin(typed);
  if (split === null) return typed;
  // Without a value, the field tells that it is empty.
  if (split.value !== "")
    taken.push({ path, nature, typed, pair: split.ok ? split : split.mend, isOneText: true });
  const number = nature.kind === "number" ? parseNumber(split.value) : null;
  return number?.ok ? number.value : split.value;
}

/** What a field holds, without uncertainties, which are not looked at. */
export function withoutWithin(schema: z.ZodType, typed: unknown): unknown {
  return take(schema, typed, [], [], new KnownParts());
}
