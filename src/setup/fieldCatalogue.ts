import * as z from "zod";
import { setupDocument } from "./document.ts";
import { type SetupField, setupFieldOf, unwrapped } from "./fields/setupField.ts";
import { type KeyPath, valueAt } from "./types/keyPath.ts";

/**
 * Every field of the setup file that holds a value, a list or a point, in the order of the schema; made from the
 * schema itself, so that a new block is in it at once. A field that several sorts of the same block have stands once
 * for each, told apart by `when`. The inside of variants' patches is not listed: it is the setup again.
 */
export function setupFields(): readonly SetupField[] {
  known ??= fieldsOf(setupDocument, [], null);
  return known;
}
let known: readonly SetupField[] | undefined;

function fieldsOf(
  schema: z.ZodType,
  pattern: readonly string[],
  when: SetupField["when"],
): readonly SetupField[] {
  const inner = unwrapped(schema);
  if (inner instanceof z.ZodObject) {
    return Object.entries(inner.shape as Record<string, z.ZodType>).flatMap(([key, field]) =>
      fieldsAndSelf(field, [...pattern, key], when),
    );
  }
  if (inner instanceof z.ZodDiscriminatedUnion) {
    const key = inner.def.discriminator;
    const options = inner.options as readonly z.ZodObject[];
    const ofOptions = options.flatMap((option) =>
      fieldsOf(option, pattern, { key, is: wordAt(option, key) }),
    );
    const isSort = (field: SetupField) =>
      field.pattern.at(-1) === key && field.pattern.length === pattern.length + 1;
    const sort = ofOptions.find(isSort);
    const others = ofOptions.filter((field) => !isSort(field));
    return sort ? [sortField(sort, inner), ...others] : others;
  }
  return [];
}

function fieldsAndSelf(
  schema: z.ZodType,
  pattern: readonly string[],
  when: SetupField["when"],
): readonly SetupField[] {
  const self = setupFieldOf(schema, pattern, when);
  if (self.kind === "block") return fieldsOf(schema, pattern, null);
  const inner = unwrapped(schema);
  if (!(inner instanceof z.ZodArray)) return [self];
  const item = inner.element as z.ZodType;
  const ofItem = setupFieldOf(item, [...pattern, "*"], null);
  return [self, ...(ofItem.kind === "block" ? fieldsOf(item, [...pattern, "*"], null) : [ofItem])];
}

/** What was found at a place: by the word that tells the sort of the one block of several sorts on the way to it, if there is one. */
interface KnownField {
  readonly sort: { readonly at: number; readonly key: string } | null;
  readonly fields: Map<string, SetupField>;
}

/** By place, entries of long lists alike. A form asks for each of its fields at every key. */
const found = new Map<string, KnownField>();

/** Entries up to here are told apart: no point or other fixed list has more. */
const TOLD_APART = 9;

/**
 * The field at a path of a document, list positions and the coordinates of a point included; null where the schema
 * knows none. The document says which sort of a block is meant (`kind`, `type`).
 */
export function fieldAt(path: KeyPath, document: unknown): SetupField | null {
  const place = path
    .map((step) => (typeof step === "string" ? step : `\0${step > TOLD_APART ? "*" : step}`))
    .join("\n");
  const known = found.get(place);
  const sortOf = (sort: KnownField["sort"]) =>
    sort === null ? "" : String(valueAt(document, [...path.slice(0, sort.at), sort.key]));
  const before = known?.fields.get(sortOf(known.sort));
  if (before !== undefined) return before;
  const sorts: NonNullable<KnownField["sort"]>[] = [];
  const field = lookUp(path, document, sorts);
  // Keys that no field has are without end.
  if (field !== null && sorts.length < 2) {
    const sort = sorts[0] ?? null;
    const one = known ?? { sort, fields: new Map() };
    one.fields.set(sortOf(sort), field);
    found.set(place, one);
  }
  return field;
}

/** @param sortsSeen takes up where on the way the document says of which sort a block is */
function lookUp(
  path: KeyPath,
  document: unknown,
  sortsSeen: NonNullable<KnownField["sort"]>[],
): SetupField | null {
  let schema: z.ZodType = setupDocument;
  let when: SetupField["when"] = null;
  let sorts: z.ZodDiscriminatedUnion | null = null;
  const pattern: string[] = [];
  for (const [i, step] of path.entries()) {
    let inner = unwrapped(schema);
    when = null;
    sorts = null;
    if (inner instanceof z.ZodDiscriminatedUnion) {
      const key = inner.def.discriminator;
      sortsSeen.push({ at: i, key });
      const block = valueAt(document, path.slice(0, i));
      const is = String(valueAt(block, [key]));
      // Of an unknown sort, only the sort itself can be told.
      const option = optionOf(inner, block) ?? (step === key ? (inner.options[0] as z.ZodObject) : undefined);
      if (!option) return null;
      if (step === key) sorts = inner;
      when = { key, is };
      inner = option;
    }
    const next = schemaAt(inner, step);
    if (!next) return null;
    schema = next;
    pattern.push(typeof step === "number" && !(inner instanceof z.ZodTuple) ? "*" : String(step));
  }
  if (path.length === 0) return null;
  const field = setupFieldOf(schema, pattern, when);
  return sorts ? sortField(field, sorts) : field;
}

/** The schema of what stands at a step of an object or list; null where there is none. @param value tells the sort of a block */
export function schemaInside(schema: z.ZodType, step: string | number, value: unknown): z.ZodType | null {
  const inner = unwrapped(schema);
  if (!(inner instanceof z.ZodDiscriminatedUnion)) return schemaAt(inner, step);
  const option = optionOf(inner, value);
  return option ? schemaAt(option, step) : null;
}

/** Which sort of a block a value is; undefined = an unknown one. */
function optionOf(union: z.ZodDiscriminatedUnion, value: unknown): z.ZodObject | undefined {
  const key = union.def.discriminator;
  const is = String(valueAt(value, [key]));
  return (union.options as readonly z.ZodObject[]).find((one) => wordAt(one, key) === is);
}

function schemaAt(schema: z.ZodType, step: string | number): z.ZodType | null {
  if (schema instanceof z.ZodObject) {
    const shape = schema.shape as Record<string, z.ZodType>;
    return typeof step === "string" && Object.hasOwn(shape, step) ? shape[step]! : null;
  }
  if (typeof step !== "number") return null;
  if (schema instanceof z.ZodArray) return schema.element as z.ZodType;
  if (schema instanceof z.ZodTuple) return (schema.def.items[step] as z.ZodType | undefined) ?? null;
  return null;
}

/** The field that tells the sorts of a block apart: a choice among all of them. */
function sortField(field: SetupField, union: z.ZodDiscriminatedUnion): SetupField {
  const options = union.options as readonly z.ZodObject[];
  const choices = options.map((option) => wordAt(option, union.def.discriminator));
  const meaning = union.description ?? field.meaning;
  return { ...field, meaning, choices, when: null, schema: z.enum(choices) };
}

/** The word that tells one sort of a block from the others. */
function wordAt(option: z.ZodObject, key: string): string {
  const literal = option.shape[key];
  if (!(literal instanceof z.ZodLiteral)) throw new TypeError(`fieldCatalogue: ${key} must be a fixed word`);
  return String([...literal.values][0]);
}

/** A pattern's paths in a document: for each `*` the entries that the list there has. */
export function pathsIn(pattern: readonly string[], document: unknown): readonly KeyPath[] {
  return pattern.reduce<readonly KeyPath[]>(
    (paths, step) =>
      paths.flatMap((path) => {
        if (step !== "*") return [[...path, step]];
        const list = valueAt(document, path);
        return Array.isArray(list) ? list.map((_, i) => [...path, i]) : [];
      }),
    [[]],
  );
}
