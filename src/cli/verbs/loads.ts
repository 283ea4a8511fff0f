import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { loadsJson } from "../../studies/documents/loadsJson.ts";
import { carriersOf } from "../../studies/loads/carriers.ts";
import { type LoadsAsk, loadsReport } from "../../studies/loads/loadsReport.ts";
import { strengthOf } from "../../studies/loads/strengthOf.ts";
import { Materials } from "../../studies/strength/material.ts";
import { variantWeights } from "../../studies/strength/variantWeights.ts";
import { nearestWord } from "../../units/words.ts";
import { askedCatalogs } from "../asked/askedCatalogs.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedPose } from "../asked/poseAsked.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, remarkUsualBuild, type Truck } from "../asked/readTruck.ts";
import {
  type AlignedOptions,
  type CatalogOptions,
  withAligned,
  withCatalogs,
} from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { loadsTable } from "../output/loadsTable.ts";

interface LoadsOptions extends AlignedOptions, CatalogOptions {
  readonly case?: string;
  readonly travel?: string;
  readonly steer?: string;
}

const EXAMPLES = `
Examples:
  wellsweep loads truck.json                          each case where it is worst
  wellsweep loads truck.json --travel 3 --steer -0.5  every case at one height and steering input
  wellsweep loads truck.json --case braking --json    one case, for a program

An answer here is never a verdict: it ends in 0 whatever the shares of yield are.
Exit codes: 0 an answer, 2 ${NO_ANSWER}.`;

/** `loads`: what joints, spring and knuckle carry. */
export function addLoads(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withCatalogs(withAligned(program.command("loads")), "materials")
    .description(
      "Forces in ball joints, tie rod and spring under load cases; stresses, deflection and weight of the knuckle that the setup's build block describes. It never says that a part will hold.",
    )
    .option("--case <NAME>", "one load case alone; default all of them")
    .option("--travel <LEN>", "wheel travel to look at, + = bump; default where each case is worst")
    .option("--steer <S>", "steering to look at, from -1 (full right) to 1 (full left)")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: LoadsOptions) => end(runLoads(file, options, terminal)));
}

function runLoads(file: string, options: LoadsOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const { setup } = model;
  const budget = askedBudget(truck.file, options, terminal);
  const carriers = carriersOf(setup, truck.file);
  if (!carriers.ok) throw new InputError([carriers.issue]);
  const catalog = askedCatalogs(["materials"], options.catalog ?? [], truck.inputs).materials;
  const unknown = setup.build && new Materials(setup.build, catalog).unknownMaterial(truck.file);
  if (unknown) throw new InputError([unknown]);
  const names = carriers.value.cases.map(({ name }) => name);
  const ask = { name: askedCase(truck, options, names), pose: poseOf(truck, options) };
  remarkUsualBuild(truck, terminal);
  const report = loadsReport(model, carriers.value, strengthOf(setup, catalog), ask, budget);
  const weights = variantWeights(truck.document, truck.file);
  terminal.writeOut(
    options.json
      ? documentText(loadsJson(report, setup.units, weights), truck)
      : loadsTable(report, model, weights),
  );
  return ExitCode.Fine;
}

function askedCase({ file }: Truck, options: LoadsOptions, names: readonly string[]): string | null {
  const name = options.case;
  if (name === undefined || names.includes(name)) return name ?? null;
  const near = nearestWord(name.slice(0, 200), names);
  const mend =
    near === null
      ? `no such case; there are ${names.map((one) => JSON.stringify(one)).join(", ")}`
      : `no such case; did you mean ${JSON.stringify(near)}?`;
  throw InputError.ofOption(file, "--case", name, mend);
}

function poseOf(truck: Truck, options: LoadsOptions): LoadsAsk["pose"] {
  if (options.travel === undefined && options.steer === undefined) return null;
  const { travel, steer } = askedPose(truck, options);
  return { travel, steer };
}
