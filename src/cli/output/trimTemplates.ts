import { join } from "node:path";
import { drawnBytes } from "../../files/drawnBytes.ts";
import type { ChangeReport } from "../../studies/change/changeTypes.ts";
import type { WrittenSheet } from "../../studies/documents/sheetJson.ts";
import { trimFiles } from "../../studies/drawings/trimPattern.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import { checkClearance } from "../../studies/reports/check.ts";
import { trimOf } from "../../studies/trim/trimOf.ts";
import { NO_TEMPLATE, NO_TRIM_PART } from "../../studies/wording/trimWords.ts";
import { askedPaper } from "../asked/askedSheet.ts";
import { InputError } from "../asked/inputError.ts";
import type { Truck } from "../asked/readTruck.ts";
import { heading } from "./textTable.ts";

export interface TrimAsk {
  /** The folder templates go to. */
  readonly trim?: string;
  readonly part?: string;
  readonly paper?: string;
  readonly force?: boolean;
}

/** The trim templates of the part asked for, or of the one that is nearest. @throws InputError where there is nothing to cut */
export function trimTemplates(
  { file, model }: Truck,
  report: ChangeReport,
  options: TrimAsk,
  budget: Budget,
): readonly WrittenSheet[] {
  const paper = askedPaper(file, model.setup.units, options.paper);
  const name = options.part ?? partOf(model, report, budget);
  if (name === null) throw InputError.ofOption(file, "--trim", options.trim!, NO_TRIM_PART);
  const refuse = (mend: string) => refusal(file, options, name, mend);
  requireTrimmable({ file, model }, options, name);
  const trim = trimOf(model, name, { budget: budget.share(1) });
  if (trim === null) throw refuse(NO_TEMPLATE.notFound);
  if (trim.regions.length === 0) throw refuse(NO_TEMPLATE.nothing);
  return trimFiles(trim.regions, model, paper, heading(model.setup)).files.map((one) => ({
    ...one,
    file: join(options.trim!, one.file),
    bytes: drawnBytes(one.contents),
  }));
}

/** @throws InputError for what is no body part, or one that has no template; it needs no search to tell */
export function requireTrimmable(
  { file, model }: Pick<Truck, "file" | "model">,
  options: TrimAsk,
  name: string,
): void {
  const body = model.setup.truck.body.find((one) => one.name === name);
  if (body === undefined) throw refusal(file, options, name, NO_TEMPLATE.unknown);
  if (body.kind === "mesh") throw refusal(file, options, name, NO_TEMPLATE.mesh);
}

function refusal(file: string, { part }: TrimAsk, name: string, mend: string): InputError {
  return InputError.ofOption(file, part === undefined ? "--trim" : "--part", name, mend);
}

function partOf(model: Truck["model"], { changes }: ChangeReport, budget: Budget): string | null {
  const found = changes.find(({ trim }) => trim !== null)?.trim;
  if (found) return found.part;
  const names = new Set(model.setup.truck.body.map(({ name }) => name));
  const near = checkClearance(model, { budget: budget.share(2) })
    .parts.filter(({ part, verdict }) => verdict !== "clear" && names.has(part))
    .sort((a, b) => a.gap - b.gap);
  return near[0]?.part ?? null;
}
