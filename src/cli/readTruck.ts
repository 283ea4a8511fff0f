import { readFileSync, statSync } from "node:fs";
import { MAX_FILE_CHARACTERS } from "../setup/limits.ts";
import { readSetup } from "../setup/readSetup.ts";
import type { Result, SetupIssue } from "../setup/types.ts";
import { alignedModel } from "../studies/alignment/alignedModel.ts";
import { bothSides } from "../studies/alignment/bothSides.ts";
import { setSide } from "../studies/alignment/setSide.ts";
import { type Model, modelOf } from "../studies/model.ts";
import { InputError } from "./inputError.ts";
import { meshesBeside } from "./meshesBeside.ts";
import { openMend } from "./openMend.ts";
import { stanceError } from "./stanceError.ts";
import type { Terminal } from "./terminal.ts";

/** A setup file read and put together. */
export interface Truck {
  /** The file as the user named it. */
  readonly file: string;
  readonly model: Model;
}

/**
 * Reads a setup file, or standard input for `-`, with the mesh files beside it, and puts its truck together with
 * one variant (undefined = as it stands), as bolted on or aligned to its targets. @throws InputError with every issue found.
 */
export function readTruck(
  file: string,
  variant: string | undefined,
  terminal: Terminal,
  aligned: true | undefined = undefined,
): Truck {
  const name = file === "-" ? "standard input" : file === "" ? '""' : file;
  const text = textOf(name, file === "-" ? readInput(name, terminal) : readBytes(file, name));
  const read = accepted(readSetup(text, name, variant ?? null, meshesBeside(file)));
  const built = modelOf(read.setup, name);
  if (!built.ok) throw inputError(built.issues);
  return { file: name, model: aligned ? alignedTruck(name, built.model) : built.model };
}

function alignedTruck(file: string, model: Model): Model {
  if (model.setup.alignment.targets === null) {
    const mend =
      'is missing, so there is nothing to align to; give it, such as { "camber": -0.5, "caster": 4 }, or leave --aligned out';
    throw new InputError([{ file, key: "alignment.targets", value: "", mend }]);
  }
  const solved = bothSides(model, setSide);
  if (!solved.ok) throw stanceError(file, model, solved.travel);
  const built = alignedModel(model, solved.alignment, file);
  if (!built.ok) throw inputError(built.issues);
  return built.model;
}

function accepted<T>(result: Result<T>): T {
  if (!result.ok) throw inputError(result.issues);
  return result.value;
}

function inputError(issues: readonly SetupIssue[]): InputError {
  const [first, ...rest] = issues;
  if (!first) throw new TypeError("readTruck: refused without an issue");
  return new InputError([first, ...rest]);
}

function readBytes(file: string, name: string): Uint8Array {
  try {
    // UTF-8 takes at most 3 bytes for each UTF-16 character: more bytes are more characters than allowed.
    const { size } = statSync(file);
    if (size > 3 * MAX_FILE_CHARACTERS)
      throw InputError.ofFile(name, "is too large to be a setup; name a setup file");
    return readFileSync(file);
  } catch (error) {
    throw error instanceof InputError ? error : InputError.ofFile(name, openMend(error));
  }
}

function readInput(name: string, terminal: Terminal): Uint8Array {
  try {
    return terminal.readInput();
  } catch (error) {
    throw InputError.ofFile(name, openMend(error));
  }
}

function textOf(file: string, bytes: Uint8Array): string {
  try {
    // The reader itself refuses a byte order mark, with its mend.
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw InputError.ofFile(file, "is not UTF-8 text; save it as plain UTF-8");
  }
}
