import type { Result } from "../types/types.ts";
import { describeValue } from "./describeValue.ts";
import { findJsonFault, type JsonFault, lineAt } from "./jsonFault.ts";
import { MAX_FILE_CHARACTERS, MAX_SHOWN } from "./limits.ts";

/**
 * The JSON of a file's text; a fault of it is an issue with line and column. Never throws.
 * @param what the file is to be, for one that is too long: `a setup`
 */
export function parseJson(text: string, file: string, what: string): Result<unknown> {
  if (text.length > MAX_FILE_CHARACTERS) {
    const value = `${text.length} characters`;
    const mend = `${what} is at most ${MAX_FILE_CHARACTERS} characters; is this the right file`;
    return { ok: false, issues: [{ file, key: "", value, mend }] };
  }
  const fault = findJsonFault(text);
  if (fault) return { ok: false, issues: [{ file, key: "", ...placeFault(text, fault) }] };
  return { ok: true, value: JSON.parse(text) };
}

/** The fault with its line and column (from 1) and what stands there. */
function placeFault(text: string, fault: JsonFault): { readonly value: string; readonly mend: string } {
  const { line, column } = lineAt(text, fault.at);
  const here = /^[^\r\n]*/.exec(text.slice(fault.at, fault.at + MAX_SHOWN))![0].trim();
  return {
    value: here === "" ? "" : describeValue(here),
    mend: `line ${line}, column ${column}: ${fault.mend}`,
  };
}
