/**
 * The long runs: `npm run fuzz` reads 64 MB of each broken file, sets every number of every example to wild values, and
 * runs random setups from seed 10 000 on. `npm run fuzz -- SEED [COUNT]` runs the random setups of those seeds alone.
 * Prints what it finds, for a random setup with its seed and the smallest setup that still fails. Exits 1 then.
 */

import { readMesh } from "../../src/files/readMesh.ts";
import { readSetup } from "../../src/setup/readSetup.ts";
import { processorTime } from "../bench/processorTime.ts";
import { brokenMeshes } from "./brokenMeshes.ts";
import { brokenSetups } from "./brokenSetups.ts";
import { exampleDocuments } from "./exampleDocuments.ts";
import { faultsAt } from "./faults.ts";
import { randomSetup } from "./randomSetups.ts";
import { smallest } from "./smallest.ts";
import { wildCases } from "./wildValues.ts";

const LARGE = 60 * 1024 * 1024;
const FIRST_SEED = 10_000;
const COUNT = 20_000;

let failures = 0;
const say = (line: string) => process.stdout.write(`${line}\n`);

function failed(what: string, faults: readonly string[]): void {
  failures++;
  say(`${what}\n  ${faults.join("\n  ")}`);
}

function readBroken(): void {
  for (const [name, textOf] of Object.entries(brokenSetups)) {
    const text = textOf(LARGE);
    timed(name, text.length, () => readSetup(text, "broken.json").ok);
  }
  for (const [name, meshOf] of Object.entries(brokenMeshes)) {
    const mesh = meshOf(LARGE);
    timed(name, mesh.bytes.length, () => readMesh(mesh.bytes, mesh.name).ok);
  }
}

function timed(name: string, size: number, read: () => boolean): void {
  const before = processorTime();
  try {
    const ok = read();
    say(
      `${((processorTime() - before) / 1e9).toFixed(1)} s  ${(size / 1048576).toFixed(0)} MB  ${name}${ok ? ", read" : ""}`,
    );
  } catch (error) {
    failed(name, [String(error)]);
  }
}

function runWild(): void {
  for (const [name, document] of exampleDocuments) {
    const cases = wildCases(document);
    say(`${cases.length} wild values in ${name}`);
    for (const [i, { path, value, text }] of cases.entries()) {
      const faults = faultsAt(text, i % 2 === 0, true);
      if (faults.length > 0) failed(`${name}: ${path.join(".")} = ${JSON.stringify(value)}`, faults);
    }
  }
}

function runRandom(from: number, count: number): void {
  for (let seed = from; seed < from + count; seed++) {
    const text = randomSetup(seed);
    const json = seed % 2 === 0;
    const faults = faultsAt(text, json, true);
    if (faults.length > 0) {
      // Smaller setups must fail alike: by their first word, which is the verb.
      const [verb] = faults[0]!.split(":");
      const fails = (other: string) =>
        faultsAt(other, json, true).some((fault) => fault.startsWith(`${verb}:`));
      failed(`seed ${seed}`, [...faults, smallest(text, fails)]);
    }
    if ((seed - from + 1) % 1000 === 0) say(`${seed - from + 1} random setups`);
  }
}

const [seed, count] = process.argv.slice(2).map(Number);
if (seed === undefined) {
  readBroken();
  runWild();
  runRandom(FIRST_SEED, COUNT);
} else runRandom(seed, count ?? 1);
say(failures === 0 ? "nothing found" : `${failures} found`);
process.exitCode = failures === 0 ? 0 : 1;
