import { inOutFolder, OutRefused } from "../disk/outTarget.ts";
import { writeFiles } from "../disk/writeFiles.ts";
import { InputError } from "./inputError.ts";
import type { readTruck } from "./readTruck.ts";

/** Writes files into a folder, all or none. @param option that named the folder @throws InputError where one cannot be written */
export function writeSheets(
  { file, inputs }: ReturnType<typeof readTruck>,
  out: string,
  { force = false }: { readonly force?: boolean },
  files: readonly { readonly file: string; readonly bytes: Uint8Array }[],
  option: string,
): void {
  const refuse = (name: string, mend: string) => InputError.ofOption(file, option, name, mend);
  try {
    inOutFolder(out, () => writeFiles(files, { inputs, force }, refuse));
  } catch (error) {
    if (error instanceof OutRefused) throw refuse(out, error.message);
    throw error;
  }
}
