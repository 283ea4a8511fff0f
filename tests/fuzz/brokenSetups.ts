import { exampleDocuments } from "./exampleDocuments.ts";

const { variants: _, ...base } = exampleDocuments.get("half-ton-on-air")!;
const truck = base.truck as object;

/** `bytes` of entries of about `each` bytes. */
const entries = <T>(bytes: number, each: number, entry: (i: number) => T): T[] =>
  Array.from({ length: Math.ceil(bytes / each) }, (_, i) => entry(i));
const filled = (text: string, bytes: number) => text.repeat(Math.ceil(bytes / text.length));
const setup = (change: object) => JSON.stringify({ ...base, ...change });
const body = (parts: readonly object[]) => setup({ truck: { ...truck, body: parts } });
const ball = { name: "ball", kind: "path", radius: 1, points: [[0, 0, 0]] };
const { radius: __, ...unsound } = ball;

/** Texts of about so many bytes that are no setup, or one that asks for far too much. */
export const brokenSetups: Readonly<Record<string, (bytes: number) => string>> = {
  "many variants": (bytes) =>
    setup({ variants: entries(bytes, 33, (i) => ({ name: `v${i}`, patch: { name: "other" } })) }),
  "variants that are each a large body": (bytes) =>
    setup({
      variants: entries(200, 1, (i) => ({
        name: `v${i}`,
        patch: { truck: { body: entries(bytes / 200, 60, (j) => ({ ...ball, name: `p${j}` })) } },
      })),
    }),
  "variants that are each wrong": (bytes) =>
    setup({
      variants: entries(bytes, 50, (i) => ({ name: `v${i}`, patch: { knuckle: { hubFace: "wide" } } })),
    }),
  "body parts without a radius": (bytes) => body(entries(bytes, 49, (i) => ({ ...unsound, name: `p${i}` }))),
  "a thousand parts of wrong points": (bytes) =>
    body(
      entries(1000, 1, (i) => ({
        ...ball,
        name: `p${i}`,
        points: entries(Math.min(bytes / 1000, 9000), 10, () => [0, 0, "x"]),
      })),
    ),
  "wrong points": (bytes) => body([{ ...ball, points: entries(bytes, 10, () => [0, 0, "x"]) }]),
  "points too far away": (bytes) => body([{ ...ball, points: entries(bytes, 10, () => [0, 0, 1e9]) }]),
  "parts of one name": (bytes) => body(entries(bytes, 60, () => ball)),
  "a mesh of wrong vertices": (bytes) =>
    body([
      { name: "m", kind: "mesh", vertices: entries(bytes, 10, () => [0, 0, "x"]), triangles: [[0, 1, 2]] },
    ]),
  "a mesh of triangles without vertices": (bytes) =>
    body([{ name: "m", kind: "mesh", vertices: [[0, 0, 0]], triangles: entries(bytes, 8, () => [0, 1, 2]) }]),
  "a mesh that is sound": (bytes) =>
    body([
      {
        name: "m",
        kind: "mesh",
        vertices: entries(bytes / 2, 8, (i) => [0, i % 7, i % 3]),
        triangles: entries(bytes / 2, 8, () => [0, 1, 2]),
      },
    ]),
  "stances by nothing": (bytes) => setup({ stances: entries(bytes, 14, (i) => ({ name: `s${i}` })) }),
  "unknown keys": (bytes) => setup(Object.fromEntries(entries(bytes, 14, (i) => [`key${i}`, 1] as const))),
  "objects of unknown keys": (bytes) =>
    setup({
      more: entries(bytes, 4000, () => Object.fromEntries(entries(4000, 8, (i) => [`k${i}`, 1] as const))),
    }),
  "parts with unknown keys": (bytes) =>
    body(
      entries(bytes, 8000, (j) => ({
        ...ball,
        name: `p${j}`,
        ...Object.fromEntries(entries(7000, 12, (i) => [`radios${i}`, 1] as const)),
      })),
    ),
  "one key": (bytes) => `{"${filled("k", bytes)}": 1}`,
  "one name": (bytes) => setup({ name: filled("n", bytes) }),
  "one length": (bytes) => setup({ allowance: filled("1", bytes) }),
  "one text that is never closed": (bytes) => `{"name": "${filled("\\u0041", bytes)}`,
  "one text of odd characters": (bytes) => setup({ name: filled("\u0085", bytes) }),
  "numbers that never end": (bytes) => `[${filled("0,", bytes)}`,
  "lists in lists": (bytes) => filled("[", bytes),
  spaces: (bytes) => filled(" ", bytes),
  "empty lines and a word": (bytes) => `${filled("\n", bytes)}x`,
  "an object of empty lines": (bytes) => `{${filled("\n", bytes)}`,
  "points and no end": (bytes) => setup({ more: entries(bytes, 8, () => [0, 1, 2]) }).slice(0, -2),
};
