import { readFileSync } from "node:fs";
import type { Terminal } from "./terminal.ts";

/** The process's own streams. A reader that hangs up (`| head`) ends the run quietly. */
export function nodeTerminal(): Terminal {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on("error", (error: NodeJS.ErrnoException) => {
      if (error.code !== "EPIPE") throw error;
      process.exit();
    });
  }
  return {
    writeOut: (text) => process.stdout.write(text),
    writeError: (text) => process.stderr.write(text),
    readInput: () => readFileSync(0),
    // To the start of the line, which is then cleared.
    ...(process.stderr.isTTY
      ? { showProgress: (text: string) => void process.stderr.write(`\r\u001b[K${text}`) }
      : {}),
  };
}
