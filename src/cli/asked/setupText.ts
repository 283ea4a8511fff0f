import { MAX_FILE_CHARACTERS } from "../../setup/reading/limits.ts";
import { NO_SETUP_FILE, openMend, setupTooLargeMend } from "../../studies/wording/fileMends.ts";
import { type InputFiles, ReadRefused } from "../disk/readBytes.ts";
import { InputError } from "./inputError.ts";
import type { Terminal } from "./terminal.ts";

/** UTF-8 takes at most 3 bytes for each UTF-16 character: more bytes are more characters than allowed. */
const MOST_BYTES = 3 * MAX_FILE_CHARACTERS;

/**
 * The text of a setup file, or of standard input for `-`, and what the user knows it as. @param inputs remembers the file
 * @throws InputError
 */
export function setupText(
  file: string,
  inputs: InputFiles,
  terminal: Terminal,
): { readonly name: string; readonly text: string } {
  const name = file === "-" ? "standard input" : file === "" ? '""' : file;
  return { name, text: textOf(name, setupBytes(file, name, inputs, terminal)) };
}

function setupBytes(file: string, name: string, inputs: InputFiles, terminal: Terminal): Uint8Array {
  try {
    if (file === "-") return inputs.note(terminal.readInput(MOST_BYTES), name);
    return inputs.read(file, MOST_BYTES);
  } catch (error) {
    throw InputError.ofFile(name, readMend(error));
  }
}

function readMend(error: unknown): string {
  if (!(error instanceof ReadRefused)) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    return openMend(code);
  }
  return error.why === "no file" ? NO_SETUP_FILE : setupTooLargeMend(MOST_BYTES);
}

function textOf(file: string, bytes: Uint8Array): string {
  try {
    // The reader itself refuses a byte order mark, with its mend.
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw InputError.ofFile(file, "is not UTF-8 text; save it as plain UTF-8");
  }
}
