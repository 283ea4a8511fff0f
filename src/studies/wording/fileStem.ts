import { DEFAULT_NAME } from "../../setup/types/defaults.ts";

/**
 * Words as part of a file's name: letters and digits of any script, hyphens for all between; Latin letters without their accents.
 * "" = they have none. @param most letters
 */
export function fileWords(words: string, most: number): string {
  const plain = words
    .normalize("NFKD")
    .replace(/(\p{Script=Latin})[\u0300-\u036f]+/gu, "$1")
    .normalize("NFC")
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, "-");
  return [...plain].slice(0, most).join("").replace(/^-|-$/g, "");
}

/** Most letters of a file's name that are the truck's, and that are its variant's. */
const MOST = { truck: 48, variant: 32 };

/** A truck that files are named for. */
interface NamedForFiles {
  readonly name: string;
  readonly variant: string | null;
}

/**
 * What files of a truck begin with: its name and its variant's, `fern-street-half-ton-deeper-wheels`, or the name of the file it is
 * from where it has none of its own. @param file with or without its ending
 */
export function fileStem({ name, variant }: NamedForFiles, file: string): string {
  const own = name === DEFAULT_NAME ? "" : fileWords(name, MOST.truck);
  const truck = own || file.replace(/\.[^.]*$/, "") || "truck";
  const shown = fileWords(variant ?? "", MOST.variant);
  return (shown === "" ? truck : `${truck}-${shown}`).toLowerCase();
}
