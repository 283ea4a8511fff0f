import { defineConfig } from "vitest/config";

/** Two projects: `core` runs in Node alone; `browser` drives the built workbench in a real browser. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "core",
          environment: "node",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**"],
          // Referees and property tests take seconds on a busy machine; time is no part of what they assert.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // All cores: by default one of two would stand idle.
          maxWorkers: "100%",
          sequence: { groupOrder: 0 },
        },
      },
      {
        test: {
          name: "browser",
          environment: "node",
          include: ["tests/browser/**/*.test.{ts,tsx}"],
          globalSetup: ["tests/browser/harness/globalSetup.ts"],
          // A software renderer draws the stage, and one page at a time is all that two cores can draw.
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
