import { checkClearance } from "../../src/studies/reports/check.ts";
import { assembledModel, exampleSetup } from "../reference/demoModel.ts";
import { mapJobs } from "./mapJobs.ts";
import { processorTime } from "./processorTime.ts";
import type { Target } from "./targets.ts";

/** Rounds, each of both trucks one after the other, so that a busy machine slows both alike. */
const ROUNDS = 20;

const MS = 1e-6;

/** The check and the map of the truck with every block against the same truck without limits, air springs and shocks. */
export function withLimits(): Target[] {
  const setup = exampleSetup("half-ton-limits.json");
  const whole = assembledModel(setup);
  const plain = assembledModel({ ...setup, limits: null, airSpring: null });
  const [wholeMap, plainMap] = [mapJobs(whole)[0]!, mapJobs(plain)[0]!];
  const check = leastOf(
    () => checkClearance(whole),
    () => checkClearance(plain),
  );
  const map = leastOf(
    () => wholeMap.run(),
    () => plainMap.run(),
  );
  return [
    {
      what: "check of the half-ton with limits, springs and shocks / without",
      found: check[0] / check[1],
      limit: { atMost: 1.5 },
      unit: "×",
    },
    { what: `${plainMap.name}, without`, found: map[1] * MS, limit: { atMost: 16.7 }, unit: "ms" },
    { what: `${wholeMap.name}, with`, found: map[0] * MS, limit: { atMost: 16.7 }, unit: "ms" },
  ];
}

/** The least processor time each of two jobs took, ns. */
function leastOf(a: () => unknown, b: () => unknown): readonly [number, number] {
  const least: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round < ROUNDS; round++) {
    for (const [i, run] of [a, b].entries()) {
      const start = processorTime();
      run();
      least[i] = Math.min(least[i]!, processorTime() - start);
    }
  }
  return least;
}
