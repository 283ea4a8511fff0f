import { readFileSync } from "node:fs";
import { join } from "node:path";
import { CATALOG_FILES, type CatalogKind } from "../../setup/catalogs/catalogDocument.ts";
import { type Catalogs, NO_CATALOGS, readCatalog } from "../../setup/catalogs/readCatalog.ts";
import { MAX_FILE_CHARACTERS } from "../../setup/reading/limits.ts";
import {
  CATALOG_TOO_LARGE,
  NO_CATALOG_FILE,
  openMend,
  otherCatalogMend,
} from "../../studies/wording/fileMends.ts";
import { ownPackage } from "../disk/ownPackage.ts";
import { type InputFiles, ReadRefused } from "../disk/readBytes.ts";
import { InputError } from "./inputError.ts";

/** UTF-8 takes at most 3 bytes for each UTF-16 character. */
const MOST_BYTES = 3 * MAX_FILE_CHARACTERS;

/**
 * The catalogs a verb goes by: those given, each in place of the one of its kind that comes with the program. Other kinds
 * hold nothing.
 * @throws InputError with every issue of the first file that cannot be used, or is of a kind the verb does not go by
 */
export function askedCatalogs(
  kinds: readonly CatalogKind[],
  files: readonly string[],
  inputs: InputFiles,
): Catalogs {
  let catalogs = ownCatalogs(kinds);
  for (const file of files) {
    const read = readCatalog(textOf(file, inputs), file);
    if (!read.ok) {
      const [first, ...rest] = read.issues;
      throw new InputError([first!, ...rest]);
    }
    const other = Object.keys(read.value).find((kind) => !kinds.some((one) => one === kind));
    if (other !== undefined)
      throw new InputError([
        { file, key: "kind", value: JSON.stringify(other), mend: otherCatalogMend(kinds) },
      ]);
    catalogs = { ...catalogs, ...read.value };
  }
  return catalogs;
}

/** The catalogs that come with the program. */
function ownCatalogs(kinds: readonly CatalogKind[]): Catalogs {
  const folder = join(ownPackage().folder, "shared", "catalogs");
  const read = kinds.map((kind) => {
    const name = CATALOG_FILES[kind];
    const catalog = readCatalog(readFileSync(join(folder, `${name}.json`), "utf8"), name);
    if (!catalog.ok) throw new Error(`its catalog ${name} is broken; install it again`);
    return catalog.value;
  });
  return Object.assign({}, NO_CATALOGS, ...read) as Catalogs;
}

function textOf(file: string, inputs: InputFiles): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(inputs.read(file, MOST_BYTES));
  } catch (error) {
    throw InputError.ofFile(file, readMend(error));
  }
}

function readMend(error: unknown): string {
  if (error instanceof ReadRefused) return error.why === "no file" ? NO_CATALOG_FILE : CATALOG_TOO_LARGE;
  const { code } = error as NodeJS.ErrnoException;
  if (code === "ERR_ENCODING_INVALID_ENCODED_DATA") return "is not UTF-8 text; save it as plain UTF-8";
  if (code === undefined) throw error;
  return openMend(code);
}
