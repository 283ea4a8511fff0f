#!/usr/bin/env node
import { nodeTerminal } from "./nodeTerminal.ts";
import { run } from "./run.ts";

process.exitCode = run(process.argv.slice(2), nodeTerminal());
