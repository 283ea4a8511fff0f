import { availableParallelism } from "node:os";
import { shareOut } from "../../src/cli/threads/shareOut.ts";
import { oddsTogether } from "../../src/studies/odds/oddsOf.ts";
import { windowSubject } from "../studies/window/windowSubject.ts";
import { askedChart, CHART_CELLS } from "./chartJobs.ts";
import { DRAWS, ODDS_TRUCKS } from "./oddsJobs.ts";
import { printColumns } from "./printColumns.ts";
import { processorTime } from "./processorTime.ts";
import { printTargets } from "./targets.ts";

/**
 * How long one waits for long jobs of the command line, done by one thread and by as many as there are processors, both just
 * started, as the command line starts them: wall clock, so on a busy machine it is too long and the ratio too small.
 */
const ROUNDS = Number(process.argv[2] ?? 3);
/** ms. */
const AIM = 10_000;
const PLENTY = 1000;
const nobody = () => {};

interface Waited {
  readonly name: string;
  /** The answer as text, the same with any number of threads. */
  readonly by: (threads?: number) => string;
}

const odds = ODDS_TRUCKS.map(({ name, variant }): Waited => {
  const { subject } = windowSubject("half-ton-on-air.json", variant);
  const options = { draws: DRAWS };
  return {
    name,
    by: (threads) =>
      JSON.stringify(
        oddsTogether(subject, shareOut("odds", { subject, options }, PLENTY, nobody, threads), options),
      ),
  };
});

const chart = (file: string): Waited => {
  const { subject, ask } = askedChart(file);
  return {
    name: `a fit chart of ${file}, ${CHART_CELLS} cells`,
    by(threads) {
      const shares = shareOut("chart", { subject, ask }, PLENTY, nobody, threads);
      return JSON.stringify(shares.flatMap((cells) => [...cells]).sort(([a], [b]) => a - b));
    },
  };
};

const rows = [...odds, chart("half-ton-on-air.json"), chart("half-ton-limits.json")].map((job) => {
  const rounds = Array.from({ length: ROUNDS }, () => {
    const before = processorTime();
    const [one, a] = timed(() => job.by(1));
    const spent = (processorTime() - before) * 1e-6;
    const [many, b] = timed(() => job.by());
    if (a !== b) throw new Error(`${job.name}: shared out it says otherwise`);
    return { spent, one, many, ratio: one / many };
  });
  const of = (what: keyof (typeof rounds)[number]) => middle(rounds.map((round) => round[what]));
  return { name: job.name, spent: of("spent"), one: of("one"), many: of("many"), ratio: of("ratio") };
});
printColumns([
  [
    `waited for, wall clock; ${availableParallelism()} processors`,
    "one thread",
    "of it processor time",
    "shared out",
    "ratio",
  ],
  ...rows.map(({ name, spent, one, many, ratio }) => [
    name,
    ...[one, spent, many].map((ms) => `${Math.round(ms)} ms`),
    `${ratio.toFixed(2)}×`,
  ]),
]);
printTargets(rows.map(({ name, many }) => ({ what: name, found: many, limit: { atMost: AIM }, unit: "ms" })));

function timed(job: () => string): readonly [ms: number, text: string] {
  const start = performance.now();
  const text = job();
  return [performance.now() - start, text];
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
