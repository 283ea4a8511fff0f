import type { LoadedMeshes } from "../reading/blockReading.ts";
import { capIssues, IssueList } from "../reading/issueList.ts";
import { REFUSED_KEY_MEND, refusedKeys } from "../reading/mergePatch.ts";
import { tooMuch } from "../reading/tooMuch.ts";
import { resolveDocument, withBaseMarks } from "../resolveDocument.ts";
import { type KeyPath, valueAt } from "../types/keyPath.ts";
import type { KnownParts } from "../types/knownParts.ts";
import type { Result, Setup } from "../types/types.ts";
import { effectiveDocument } from "./effectiveDocument.ts";

/**
 * The setup of a document while it is edited, with one variant applied (null = none). Unlike `resolveSetup`, a variant
 * that is not shown may be unsound, and body parts that did not change are not read again. Issues name keys of the
 * document with the variant applied. Never throws; nothing may change the document in place.
 * @param known body parts read before, by this and earlier calls
 */
export function resolveShown(
  document: unknown,
  file: string,
  variant: string | null,
  meshes: LoadedMeshes,
  known: KnownParts,
): Result<Setup> {
  const issues = new IssueList(file);
  const fail = (path: KeyPath, value: unknown, mend: string): Result<never> => {
    issues.add(path, value, mend);
    return { ok: false, issues: issues.all() };
  };
  const light = known.withStandIns(document);
  const much = tooMuch(light);
  if (much !== null) return fail(much.path, valueAt(light, much.path), much.mend);
  const [refused] = refusedKeys(light);
  if (refused) return fail(refused, valueAt(document, refused), REFUSED_KEY_MEND);

  const shown = effectiveDocument(document, variant);
  if (shown === null) return fail(["variants"], variant, "there is no such variant");
  const resolved = resolveDocument(shown, issues, meshes, known);
  if (!resolved) return { ok: false, issues: capIssues(issues.all(), issues.more) };
  return {
    ok: true,
    value: { ...withBaseMarks(resolved, document), variant, variantNames: variantNames(document) },
  };
}

/** Names of a document's variants that have one, in order. */
export function variantNames(document: unknown): readonly string[] {
  const list = valueAt(document, ["variants"]);
  if (!Array.isArray(list)) return [];
  return list.flatMap((entry: unknown) => {
    const name = valueAt(entry, ["name"]);
    return typeof name === "string" ? [name] : [];
  });
}
