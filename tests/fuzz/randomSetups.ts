import { exampleDocuments, type SetupJson } from "./exampleDocuments.ts";
import { type Json, pathsIn, valueIn, withValue } from "./jsonPaths.ts";
import { type Seeded, seeded } from "./seeded.ts";

/** Blocks a setup may do without. */
const OPTIONAL = [
  "hardware",
  "limits",
  "airSpring",
  "masses",
  "roll",
  "floor",
  "adjusters",
  "stances",
  "readings",
];

/** Blocks of a knuckle that is made: of whatever truck, they may stand in any other. */
const MADE = ["build", "loads", "jig", "order", "asBuilt", "masses"];

/** The examples that are quick to read: a scan is a file of its own. */
const BASES = [...exampleDocuments].filter(([name]) => name !== "scanned-fender").map(([, base]) => base);

/** What may stand anywhere, right or wrong. */
const JUNK: readonly Json[] = [
  ...[null, true, false, "", " ", "x", "5 5/8", "5 5/8 im", "-3/4 in", "12°", "60 psi", "both", "left"],
  ...[0, -1, 1, 0.5, 90, 1e9, 1e-9, -1e300, [], [1], [0, 0, 0], [["1", "2", "3"]], {}, { name: "x" }],
  ...["toString", "\u202e", "name\nwith lines", "\u0000", "😀", "constructor"],
];

/** The text of a random setup: a truck as it could be measured, or one with mistakes. The seed repeats it. */
export function randomSetup(seed: number): string {
  const random = seeded(seed);
  const base = smaller(random.pick(BASES), random);
  // Most are broken: they cost a reader's time alone, and there are more ways to be.
  const isBelievable = random.chance(0.03);
  let document: Json = base;
  const changes = isBelievable ? 1 + random.below(6) : 2 + random.below(4);
  for (let i = 0; i < changes; i++)
    document = isBelievable ? nudged(document, random) : broken(document, random);
  const text = JSON.stringify(document);
  return !isBelievable && random.chance(0.1) ? misspelled(text, random) : text;
}

/** A truck with some of its blocks, and one or two parts of its body. */
function smaller(base: SetupJson, random: Seeded): SetupJson {
  const kept = Object.entries(base).filter(([key]) => {
    if (key === "variants") return false;
    // What moves is measured against the tire at every look.
    return OPTIONAL.includes(key) ? random.chance(key === "hardware" ? 0.05 : 0.3) : true;
  });
  const lender = random.pick(BASES);
  const borrowed = MADE.filter((key) => lender[key] !== undefined && random.chance(0.15));
  for (const key of borrowed) kept.push([key, lender[key]!]);
  const setup = Object.fromEntries(kept) as { truck: { body: Json[] } } & SetupJson;
  const body = setup.truck.body.filter(() => random.chance(0.3)).slice(0, 1);
  const variants = random.chance(0.1) ? { variants: [{ name: "v", patch: { allowance: 1 } }] } : {};
  return { ...setup, truck: { ...(setup.truck as object), body }, ...variants };
}

/** One number a little off, a length said in other units, or a limit moved. */
function nudged(document: Json, random: Seeded): Json {
  const path = random.pick(pathsIn(document));
  const was = valueIn(document, path);
  if (typeof was === "number") return withValue(document, path, was * random.between(0.7, 1.3));
  const isLength = typeof was === "string" && /^-?[\d/ .]+$/.test(was);
  if (!isLength) return document;
  const whole = Number.parseFloat(was) + random.between(-1.5, 1.5);
  return withValue(document, path, random.chance(0.5) ? Number(whole.toFixed(3)) : `${whole.toFixed(2)} in`);
}

function broken(document: Json, random: Seeded): Json {
  const paths = pathsIn(document);
  if (paths.length === 0) return random.pick(JUNK);
  const path = random.pick(paths);
  const was = valueIn(document, path);
  switch (random.below(8)) {
    case 0:
      return withValue(document, path, undefined);
    case 1: // what stands somewhere else
      return withValue(document, path, valueIn(document, random.pick(paths)) ?? null);
    case 2: // a key misspelled, or one more
      if (typeof was !== "object" || was === null || Array.isArray(was)) break;
      return withValue(document, path, renamed(was as SetupJson, random));
    case 3: // an entry twice
      if (!Array.isArray(was) || was.length === 0) break;
      return withValue(document, path, [...was, random.pick(was)]);
    case 4:
      if (typeof was !== "number") break;
      return withValue(document, path, was * random.pick([-1, 0, 10, 25.4, 1 / 25.4, 1e6]));
    case 5: {
      // Two joints in one place, arms of no length, axes in line.
      const points = paths.filter((each) => isPoint(valueIn(document, each)));
      if (points.length === 0) break;
      return withValue(document, random.pick(points), valueIn(document, random.pick(points))!);
    }
    case 6:
      return nudged(document, random);
  }
  return withValue(document, path, random.pick(JUNK));
}

function isPoint(value: Json | undefined): boolean {
  return Array.isArray(value) && value.length === 3 && value.every((each) => typeof each !== "object");
}

function renamed(object: SetupJson, random: Seeded): SetupJson {
  const entries = Object.entries(object);
  const [name, value] = entries.length > 0 ? random.pick(entries) : ["more", 1];
  const misspelt = random.chance(0.5) ? name.toLowerCase() : `${name.slice(1)}${random.pick(["", "s", "X"])}`;
  return { ...object, [misspelt]: value };
}

/** A character lost, doubled or changed, or the end cut off: no longer JSON, most often. */
function misspelled(text: string, random: Seeded): string {
  const at = random.below(text.length);
  const [head, tail] = [text.slice(0, at), text.slice(at + 1)];
  switch (random.below(4)) {
    case 0:
      return head;
    case 1:
      return head + tail;
    case 2:
      return head + text[at]! + text[at]! + tail;
    default:
      return head + random.pick(["NaN", "'", "//", ",", "}", "5 5/8", "\u201c", "\t"]) + tail;
  }
}
