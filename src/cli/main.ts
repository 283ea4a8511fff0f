#!/usr/bin/env node
import { nodeTerminal } from "./nodeTerminal.ts";
import { run } from "./run.ts";

// Caught, so that a file past its largest size is an error of the write, which is told, and does not end the program.
process.on("SIGXFSZ", () => {});

process.exitCode = run(process.argv.slice(2), nodeTerminal());
