import { visibleLines } from "../units/visibleText.ts";
import type { Terminal } from "./asked/terminal.ts";

/** A terminal to which nothing out of a file or the command line gets that would act on it instead of being read. */
export function visibleTerminal(terminal: Terminal): Terminal {
  return {
    ...terminal,
    writeOut: (text) => terminal.writeOut(visibleLines(text)),
    writeError: (text) => terminal.writeError(visibleLines(text)),
  };
}
