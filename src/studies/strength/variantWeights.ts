import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { variantNames } from "../../setup/editing/resolveShown.ts";
import { IssueList } from "../../setup/reading/issueList.ts";
import { setAt } from "../../setup/reading/setAt.ts";
import { resolveDocument } from "../../setup/resolveDocument.ts";
import type { MassesSetup } from "../../setup/types/airTypes.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { partWeight } from "./partWeight.ts";

/** What a knuckle is weighed by: blocks of a setup. */
export interface Weighed {
  readonly build: BuildSetup | null;
  readonly knuckle: KnuckleSetup;
  readonly masses: MassesSetup | null;
}

/** A variant's knuckle weighed, kg; null name = the setup as it stands. */
export interface VariantWeight {
  readonly name: string | null;
  /** null = it has no build to weigh. */
  readonly mass: number | null;
  /** More than the setup as it stands, − = less; null = one of the two cannot be weighed. */
  readonly more: number | null;
  /** Of one side, kg: what its own masses say, or those of the setup as it stands with the part's difference; null = not given. */
  readonly unsprung: number | null;
}

/** Every knuckle of a list weighed against the first. @param trucks the setup as it stands, then its variants */
export function weightsCompared(
  trucks: readonly { readonly name: string | null; readonly setup: Weighed }[],
): readonly VariantWeight[] {
  const massOf = ({ build, knuckle }: Weighed) => (build === null ? null : partWeight(build, knuckle).mass);
  const base = trucks[0]?.setup;
  if (base === undefined) return [];
  const baseMass = massOf(base);
  return trucks.map(({ name, setup }) => {
    const mass = massOf(setup);
    const more = mass === null || baseMass === null ? null : mass - baseMass;
    return { name, mass, more, unsprung: unsprungOf(setup.masses, base.masses, more) };
  });
}

function unsprungOf(own: MassesSetup | null, base: MassesSetup | null, more: number | null): number | null {
  if (own === null) return null;
  return own.unsprung === base?.unsprung ? own.unsprung + (more ?? 0) : own.unsprung;
}

/** The knuckles of a whole document weighed; variants that do not read are left out. @param file its name, for nothing but the reading */
export function variantWeights(document: unknown, file: string): readonly VariantWeight[] {
  const trucks = [null, ...variantNames(document)].flatMap((name) => {
    const shown = name === null ? withoutVariants(document) : effectiveDocument(document, name);
    if (shown === null) return [];
    // The body is not weighed, and its scans need not be read.
    const bare = setAt(withoutVariants(shown), ["truck", "body"], []);
    const setup = resolveDocument(bare, new IssueList(file), new Map());
    return setup === null ? [] : [{ name, setup }];
  });
  return trucks[0]?.name === null ? weightsCompared(trucks) : [];
}
