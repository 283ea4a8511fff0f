#!/usr/bin/env node
import { isatty } from "node:tty";
import type { Terminal } from "./asked/terminal.ts";
import { OutStream } from "./disk/outStream.ts";
import { readStream } from "./disk/readBytes.ts";
import { run } from "./run.ts";
import { shareOut } from "./threads/shareOut.ts";

// Caught, so that a file past its largest size is an error of the write, which is told, and does not end the program.
process.on("SIGXFSZ", () => {});

process.exitCode = run(process.argv.slice(2), nodeTerminal());

/**
 * The process's own streams, by their numbers: Node's stream objects tell of a failure only after the run has ended, and
 * give up on an input that is not ready.
 */
function nodeTerminal(): Terminal {
  const out = new OutStream(1, "standard output");
  const error = new OutStream(2, "standard error");
  return {
    writeOut: (text) => out.write(text),
    writeError: (text) => error.write(text),
    readInput: (most) => readStream(0, most),
    shareOut,
    // To the start of the line, which is then cleared.
    ...(isatty(2) ? { showProgress: (text: string) => error.write(`\r\u001b[K${text}`) } : {}),
  };
}
