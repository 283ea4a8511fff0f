import materials from "../../../shared/catalogs/materials.json";
import { type Material, readMaterials } from "../../setup/catalogs/readMaterials.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { carriersOf } from "../../studies/loads/carriers.ts";
import { type LoadsReport, loadsReport } from "../../studies/loads/loadsReport.ts";
import { strengthOf } from "../../studies/loads/strengthOf.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { Materials } from "../../studies/strength/material.ts";

/** At one pose, mm and share of lock; null = each case where it is worst. */
export interface LoadsQuestion {
  readonly pose: { readonly travel: number; readonly steer: number } | null;
  /** A catalog given in place of the program's own. */
  readonly materials?: readonly Material[] | undefined;
}

/** The loads of a truck, or the key that is missing or wrong for them. */
export type LoadsAnswer =
  | { readonly ok: true; readonly report: LoadsReport }
  | { readonly ok: false; readonly issue: Pick<SetupIssue, "key" | "mend"> };

/** What joints, spring and knuckle carry. */
export function loadsAnswerOf(
  model: Model,
  { pose, materials: given }: LoadsQuestion,
  budget: Budget,
): LoadsAnswer {
  const { setup } = model;
  const carriers = carriersOf(setup, "");
  if (!carriers.ok) return { ok: false, issue: carriers.issue };
  const read = readMaterials(materials, "materials.json");
  const catalog = given ?? (read.ok ? read.value : []);
  const unknown = setup.build && new Materials(setup.build, catalog).unknownMaterial("");
  if (unknown) return { ok: false, issue: unknown };
  const report = loadsReport(model, carriers.value, strengthOf(setup, catalog), { name: null, pose }, budget);
  return { ok: true, report };
}
