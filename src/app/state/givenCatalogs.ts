import { createStore } from "zustand/vanilla";
import type { CatalogKind } from "../../setup/catalogs/catalogDocument.ts";
import { type Catalogs, readCatalog } from "../../setup/catalogs/readCatalog.ts";
import type { Result } from "../../setup/types/types.ts";
import { tell } from "./notice.ts";
import type { WorkbenchStore } from "./workbenchStore.ts";

/** A catalog somebody gave, in place of the program's own of its kind. */
export interface GivenCatalog {
  readonly file: string;
  readonly catalogs: Partial<Catalogs>;
}

type Given = Readonly<Partial<Record<CatalogKind, GivenCatalog>>>;

/** What catalogs hold, in words. */
export const CATALOG_NAMES: Readonly<Record<CatalogKind, string>> = {
  ballJoints: "ball joints",
  brakes: "brakes",
  hubs: "hub sets",
  tubes: "tubes",
  materials: "materials",
};

const KINDS = Object.keys(CATALOG_NAMES) as CatalogKind[];

const keyOf = (kind: CatalogKind) => `wellsweep catalog ${kind}`;

/** Catalogs given at this browser; kept in it, no part of any setup. */
export const givenCatalogs = createStore<{ readonly given: Given }>()(() => ({ given: remembered() }));

/** Whether a file's text says that it is a catalog. */
export function isCatalogText(text: string): boolean {
  return /^\s*\{[^{}[\]]*"format"\s*:\s*"wellsweep-catalog"/.test(text);
}

/** Uses a catalog in place of the program's own of its kind. @returns the kind, or every issue found */
function giveCatalog(text: string, file: string): Result<CatalogKind> {
  const read = readCatalog(text, file);
  if (!read.ok) return read;
  const kind = kindOf(read.value);
  givenCatalogs.setState(({ given }) => ({ given: { ...given, [kind]: { file, catalogs: read.value } } }));
  keep(kind, JSON.stringify({ file, text }));
  return { ok: true, value: kind };
}

/** Uses a catalog that a person picked or dropped, and says so; a broken one is refused with its first issue. */
export function takeCatalog(store: WorkbenchStore, text: string, file: string): void {
  const taken = giveCatalog(text, file);
  if (!taken.ok) store.getState().refuse(taken.issues[0]!);
  else tell(`The catalog ${file} is used now, in place of the program’s own ${CATALOG_NAMES[taken.value]}.`);
}

/** Goes back to the program's own catalog of a kind. */
export function dropCatalog(kind: CatalogKind): void {
  givenCatalogs.setState(({ given: { [kind]: _, ...others } }) => ({ given: others }));
  keep(kind, null);
}

function kindOf(catalogs: Partial<Catalogs>): CatalogKind {
  return KINDS.find((kind) => catalogs[kind] !== undefined)!;
}

/** A browser may keep nothing for a page; then the catalog holds for this visit. */
function keep(kind: CatalogKind, text: string | null): void {
  try {
    if (text === null) localStorage.removeItem(keyOf(kind));
    else localStorage.setItem(keyOf(kind), text);
  } catch {
    // Too large for what the browser keeps, or nothing is kept at all.
  }
}

function remembered(): Given {
  const found: Partial<Record<CatalogKind, GivenCatalog>> = {};
  for (const kind of KINDS) {
    try {
      const kept: unknown = JSON.parse(localStorage.getItem(keyOf(kind)) ?? "null");
      const { file, text } = (kept ?? {}) as { readonly file?: unknown; readonly text?: unknown };
      if (typeof file !== "string" || typeof text !== "string") continue;
      const read = readCatalog(text, file);
      if (read.ok && kindOf(read.value) === kind) found[kind] = { file, catalogs: read.value };
    } catch {
      // What is kept may be anything.
    }
  }
  return found;
}
