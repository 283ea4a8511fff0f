import { DEFAULT_NAME } from "../../setup/types/defaults.ts";

/**
 * Words as part of a file's name: letters and digits of any script, hyphens for all between; Latin letters without their accents.
 * "" = they have none. @param most bytes of UTF-8, of which systems allow a whole name 255
 */
export function fileWords(words: string, most: number): string {
  const plain = words
    .normalize("NFKD")
    .replace(/(\p{Script=Latin})[\u0300-\u036f]+/gu, "$1")
    .normalize("NFC")
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, "-");
  return firstOf(plain.replace(/^-/, ""), most).replace(/-$/, "");
}

/** As many letters as fit, each whole and with its marks. @param most bytes of UTF-8 */
function firstOf(text: string, most: number): string {
  let first = "";
  let bytes = 0;
  for (const [letter] of text.matchAll(/.\p{M}*/gsu)) {
    bytes += encodeURIComponent(letter).replace(/%../g, "_").length;
    if (bytes > most) break;
    first += letter;
  }
  return first;
}

/** Most bytes of a file's name that are the truck's, and that are its variant's. */
const MOST = { truck: 90, variant: 50 };

/** Names of devices, which Windows lets no file have, whatever its ending (Microsoft, "Naming Files, Paths, and Namespaces", from memory). */
const DEVICE = /^(con|prn|aux|nul|com[1-9]|lpt[1-9])(?=\.|$)/;

/** Most bytes of a file's name that are its order's. */
const MOST_ORDER = { number: 60, customer: 40 };

/** A knuckle that files are named for. */
interface KnuckleForFiles extends NamedForFiles {
  readonly order: { readonly number: string | null; readonly customer: string | null } | null;
}

/**
 * What files of a truck's knuckle begin with: its order's number and customer, and its variant's name where it is one,
 * `TS-014-tamarack-street-deeper-wheels`; as all files of the truck where there is no number that a name can hold.
 * @param file with or without its ending
 */
export function knuckleStem(setup: KnuckleForFiles, file: string): string {
  const number = fileWords(setup.order?.number ?? "", MOST_ORDER.number);
  if (number === "") return fileStem(setup, file);
  const customer = fileWords(setup.order?.customer ?? "", MOST_ORDER.customer).toLowerCase();
  return [number, customer, variantWords(setup)].filter((words) => words !== "").join("-");
}

/** A truck that files are named for. */
interface NamedForFiles {
  readonly name: string;
  readonly variant: string | null;
  /** Of all variants of its file, in order. Default it is the only one. */
  readonly variantNames?: readonly string[];
}

/**
 * What files of a truck begin with: its name and its variant's, `fern-street-half-ton-deeper-wheels`, or the name of the file it is
 * from where it has none of its own. @param file with or without its ending
 */
export function fileStem(setup: NamedForFiles, file: string): string {
  const { name } = setup;
  const own = name === DEFAULT_NAME ? "" : fileWords(name, MOST.truck);
  const truck = own || firstOf(file.replace(/\.[^.]*$/, "").replace(/\p{Cs}/gu, ""), MOST.truck) || "truck";
  const shown = variantWords(setup);
  return (shown === "" ? truck : `${truck}-${shown}`).toLowerCase().replace(DEVICE, "$1_");
}

/** What a variant is called in a file's name; of several that come to the same words each after the first has a number of its own. */
function variantWords({ variant, variantNames = [] }: Omit<NamedForFiles, "name">): string {
  if (variant === null) return "";
  const taken = new Set([""]);
  for (const name of new Set([...variantNames, variant])) {
    const words = fileWords(name, MOST.variant).toLowerCase();
    let own = words;
    for (let number = 2; taken.has(own); number++) own = `${words || "variant"}-${number}`;
    if (name === variant) return own;
    taken.add(own);
  }
  return "";
}
