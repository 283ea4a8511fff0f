import { nearestWord } from "../units/words.ts";
import type { VariantsAsTyped } from "./blocks/variants.ts";
import type { SetupDocument } from "./document.ts";
import type { LoadedMeshes } from "./reading/blockReading.ts";
import { capIssues, IssueList } from "./reading/issueList.ts";
import { MAX_ISSUES, MAX_NAMED } from "./reading/limits.ts";
import { mergePatch, REFUSED_KEY_MEND, refusedKeys } from "./reading/mergePatch.ts";
import { tooMuch } from "./reading/tooMuch.ts";
import { type ResolvedDocument, resolveDocument, withBaseMarks } from "./resolveDocument.ts";
import { valueAt } from "./types/keyPath.ts";
import { KnownParts } from "./types/knownParts.ts";
import type { Result, Setup, SetupIssue } from "./types/types.ts";

/**
 * Checks a document and turns it into a setup in millimeters and radians, with one variant applied (null = none).
 * The document and every variant of it must be sound, chosen or not. Never throws; does not change the document.
 * @param file the file as the user named it, for the issues
 * @param meshes mesh files already read, by the text of their `file` key
 */
export function resolveSetup(
  document: unknown,
  file: string,
  variant: string | null = null,
  meshes: LoadedMeshes = new Map(),
): Result<Setup> {
  const issues = new IssueList(file);
  const much = tooMuch(document);
  if (much !== null) {
    issues.add(much.path, valueAt(document, much.path), much.mend);
    return fail(issues.all());
  }
  for (const path of refusedKeys(document)) issues.add(path, valueAt(document, path), REFUSED_KEY_MEND);
  if (!issues.isEmpty) return fail(issues.all());

  const known = new KnownParts();
  const base = resolveDocument(document, issues, meshes, known);
  const variants = readVariants(document, issues, file, meshes, known);
  const variantNames = variants.map((entry) => entry.name);
  if (variant !== null && !variantNames.includes(variant)) {
    issues.add(["variants"], variant, unknownVariantMend(variant, variantNames));
  }
  const all = [...issues.all(), ...variants.flatMap((entry) => entry.issues)];
  const chosen = variant === null ? base : variants.find((entry) => entry.name === variant)?.resolved;
  return all.length > 0 || !chosen
    ? fail(all, issues.more)
    : { ok: true, value: { ...withBaseMarks(chosen, document), variant, variantNames } };
}

interface VariantReading {
  readonly name: string;
  readonly resolved: ResolvedDocument | null;
  /** What the variant adds to the issues of the document as it stands. */
  readonly issues: readonly SetupIssue[];
}

/** Applies each variant whose own shape is sound and checks the whole that comes of it. */
function readVariants(
  document: unknown,
  baseIssues: IssueList,
  file: string,
  meshes: LoadedMeshes,
  known: KnownParts,
): readonly VariantReading[] {
  const list = valueAt(document, ["variants"]);
  if (!Array.isArray(list)) return [];
  const { variants: _, ...plain } = document as SetupDocument;
  const told = new Set(baseIssues.all().map(issueText));
  let found = baseIssues.all().length;
  return (list as VariantsAsTyped).flatMap((typed, i): readonly VariantReading[] => {
    // Issues past those that are reported would be looked for in vain.
    if (found > MAX_ISSUES) return [];
    if (baseIssues.touches(["variants", i, "patch"])) return [];
    const name = String(typed.name);
    const issues = new IssueList(file);
    if (Object.hasOwn(typed.patch, "variants")) {
      issues.add(
        ["variants", i, "patch", "variants"],
        typed.patch.variants,
        "a variant cannot hold variants; remove it",
      );
      return [{ name, resolved: null, issues: issues.all() }];
    }
    const patched = mergePatch(plain, typed.patch);
    if (!patched.ok) throw new TypeError(`readVariants: refused keys were not looked for: ${patched.key}`);
    const resolved = resolveDocument(patched.value, issues, meshes, known);
    const added = issues.all().filter((issue) => !told.has(issueText(issue)));
    found += added.length;
    return [
      { name, resolved, issues: added.map((issue) => ({ ...issue, mend: inVariant(issue.mend, name) })) },
    ];
  });
}

function issueText({ key, value, mend }: SetupIssue): string {
  return `${key}\n${value}\n${mend}`;
}

function inVariant(mend: string, name: string): string {
  return `in variant ${JSON.stringify(name)}: ${mend}`;
}

function unknownVariantMend(variant: string, names: readonly string[]): string {
  if (names.length === 0) return "this setup has no variants";
  const near = nearestWord(variant.slice(0, 200), names);
  const hint = near === null ? "" : `; did you mean ${JSON.stringify(near)}?`;
  const some = names.slice(0, MAX_NAMED).map((name) => JSON.stringify(name));
  return `no such variant${hint}; there are ${some.join(", ")}${names.length > MAX_NAMED ? ", …" : ""}`;
}

function fail(issues: readonly SetupIssue[], more = 0): Result<never> {
  return { ok: false, issues: capIssues(issues, more) };
}
