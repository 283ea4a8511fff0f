import type { SetupDocument } from "../../setup/document.ts";
import { readSetup } from "../../setup/readSetup.ts";
import { alignedModel } from "../../studies/alignment/alignedModel.ts";
import { bothSides } from "../../studies/alignment/bothSides.ts";
import { setSide } from "../../studies/alignment/setSide.ts";
import type { UnusualDoubt } from "../../studies/doubts/doubt.ts";
import { type Model, modelOf } from "../../studies/model/model.ts";
import { exampleLine } from "../../studies/wording/answerWords.ts";
import { usualBuildSentence } from "../../studies/wording/drawingWords.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { leftOutSentence } from "../../studies/wording/measureWords.ts";
import { unusualDoubts, unusualLines } from "../../studies/wording/unusualReport.ts";
import { meshesBeside } from "../disk/meshesBeside.ts";
import { InputFiles } from "../disk/readBytes.ts";
import { accepted, InputError, inputError, stanceError } from "./inputError.ts";
import { setupText } from "./setupText.ts";
import type { AlignedOptions } from "./sharedOptions.ts";
import type { Terminal } from "./terminal.ts";

/** A setup file read and put together. */
export interface Truck {
  /** The file as the user named it. */
  readonly file: string;
  readonly model: Model;
  /** The setup's JSON as typed, its variants included. */
  readonly document: SetupDocument;
  /** What of it is unusual and not confirmed; remarked on already. */
  readonly unusual: readonly UnusualDoubt[];
  /** The setup and the meshes that were read for it. */
  readonly inputs: InputFiles;
}

/**
 * Reads a setup file, or standard input for `-`, with the mesh files beside it, and puts its truck together with the
 * variant asked for, if any, as bolted on or aligned to its targets. @throws InputError with every issue found. What is unusual
 * is remarked on, a line each.
 */
export function readTruck(
  file: string,
  { variant, aligned, allowOutside = false }: AlignedOptions,
  terminal: Terminal,
): Truck {
  const inputs = new InputFiles();
  const { name, text } = setupText(file, inputs, terminal);
  const read = accepted(readSetup(text, name, variant ?? null, meshesBeside(file, allowOutside, inputs)));
  const built = modelOf(read.setup, name);
  if (!built.ok) throw inputError(built.issues);
  const example = exampleLine(name, built.value.setup);
  if (example !== null) terminal.remark?.(example);
  for (const issue of built.value.setup.readingsLeftOut)
    terminal.remark?.(`${name}: ${leftOutSentence(issue)}`);
  const unusual = unusualDoubts(built.value, formatOf(built.value.setup));
  for (const line of unusualLines(name, unusual)) terminal.remark?.(line);
  const model = aligned ? alignedTruck(name, built.value) : built.value;
  return { file: name, unusual, model, document: read.document, inputs };
}

/** Remarks on a knuckle that is made as the example's, where it is cut or strained by that. */
export function remarkUsualBuild({ file, model }: Truck, terminal: Terminal): void {
  const text = usualBuildSentence(model.setup);
  if (text !== null) terminal.remark?.(`${file}: ${text}`);
}

/** @throws InputError where a truck that is to be aligned has nothing to be aligned to */
export function requireTargets(file: string, { setup }: Model): void {
  if (setup.alignment.targets !== null) return;
  const mend =
    'is missing, so there is nothing to align to; give it, such as { "camber": -0.5, "caster": 4 }, or leave --aligned out';
  throw new InputError([{ file, key: "alignment.targets", value: "", mend }]);
}

function alignedTruck(file: string, model: Model): Model {
  requireTargets(file, model);
  const solved = bothSides(model, setSide);
  if (!solved.ok) throw stanceError(file, model, solved.travel);
  const built = alignedModel(model, solved.alignment, file);
  if (!built.ok) throw inputError(built.issues);
  return built.value;
}
