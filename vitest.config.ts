import { existsSync, readdirSync, readFileSync } from "node:fs";
import { defineConfig } from "vitest/config";
import { SlowestFiles } from "./tests/slowestFiles.ts";

/** Files whose samples are larger in `npm run test:long`: they ask `tests/runs.ts` how many to look at. */
const SAMPLED = readdirSync(new URL("tests", import.meta.url), { recursive: true, encoding: "utf8" })
  .map((file) => `tests/${file.replaceAll("\\", "/")}`)
  .filter((file) => /\.test\.tsx?$/.test(file) && !file.startsWith("tests/browser/"))
  .filter((file) => /from "[./]*\/runs\.ts"/.test(readFileSync(new URL(file, import.meta.url), "utf8")));

/** Journeys through what is rarely walked, minutes together: `npm test` leaves them to `npm run test:long`. */
const LONG_JOURNEYS = [
  "tests/browser/aligning.test.ts",
  "tests/browser/cutShort.test.ts",
  "tests/browser/editing.test.ts",
  "tests/browser/fromTapeToAnswer.test.ts",
  "tests/browser/frontEnd.test.ts",
  "tests/browser/handles.test.ts",
  "tests/browser/jobs.test.ts",
  "tests/browser/kills.test.ts",
  "tests/browser/scanPick.test.ts",
  "tests/browser/storage.test.ts",
];

/** Of these `npm test` walks a part, and `npm run test:long` the other (`ofThisRun` in `tests/runs.ts`). */
const IN_PARTS = [
  "tests/browser/everyView.test.ts",
  "tests/browser/heldStill.test.ts",
  "tests/browser/stage.test.ts",
];
for (const file of [...LONG_JOURNEYS, ...IN_PARTS])
  if (!existsSync(new URL(file, import.meta.url))) throw new Error(`vitest.config.ts: there is no ${file}`);

/** Every module of this repository but the test files and the page, whose styles and raw files only Vite reads. */
const SOURCES = /\/(src|tests)\/(?!app\/)(?!.*\.test\.tsx?$)/;

/** In `npm run test:all`, whether what `long` looks at in full is left out of `core`. */
const isEachOnce = process.env.WELLSWEEP_EACH_ONCE !== undefined;

/** Where a report for a program is wanted besides: `.ci/run` counts by it. */
const report = process.env.WELLSWEEP_TEST_REPORT;

/** Referees and property tests take seconds on a busy machine; time is no part of what they assert. */
const node = {
  environment: "node",
  // Sources run as Node runs them, by tsx. Through Vite's own runner each name imported is looked up at every use, which
  // makes kernels three times as slow.
  execArgv: ["--import", "tsx"],
  server: { deps: { external: [SOURCES] } },
  testTimeout: 300_000,
  hookTimeout: 300_000,
  // One process a core for all files: what they import is read, and made quick, once.
  isolate: false,
  // All cores: by default one of two would stand idle.
  maxWorkers: "100%",
} as const;

/** Two pages at a time: more than two cores can draw only wait for each other. */
const browser = {
  ...node,
  // What is handed to a page must be as it is written: tsx would put names of its own into it.
  server: { deps: { external: [/\/src\/(?!app\/|serve\/)/] } },
  globalSetup: ["tests/browser/harness/globalSetup.ts"],
  maxWorkers: 2,
  // What is waited for comes late on a busy machine; the second that is usual is no part of what is asserted.
  expect: { poll: { timeout: 20_000 } },
} as const;

/**
 * `core` runs in Node alone; `browser` drives the built workbench in a real browser; `long` and `browserLong` look at the
 * whole samples of some files of both, and walk the long journeys. `npm test` runs the first two, `npm run test:long` the others.
 */
export default defineConfig({
  test: {
    reporters: [
      "default",
      new SlowestFiles(),
      ...(report ? [["json", { outputFile: report }] as [string, object]] : []),
    ],
    projects: [
      {
        test: {
          ...node,
          name: "core",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**", ...(isEachOnce ? SAMPLED : [])],
          provide: { isLong: false },
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          ...node,
          name: "long",
          include: SAMPLED,
          provide: { isLong: true },
          testTimeout: 900_000,
          hookTimeout: 900_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          ...browser,
          name: "browser",
          include: ["tests/browser/**/*.test.{ts,tsx}"],
          exclude: LONG_JOURNEYS,
          provide: { isLong: false },
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          ...browser,
          name: "browserLong",
          include: [...IN_PARTS, ...LONG_JOURNEYS],
          provide: { isLong: true },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
