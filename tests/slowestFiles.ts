import { relative } from "node:path";
import type { Reporter, TestModule } from "vitest/node";

/** Files told of. */
const TOLD = 10;

/** Prints, after a run of many files, which of them took most, and their share of what all took. */
export class SlowestFiles implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    if (modules.length <= TOLD) return;
    const files = modules.map((module) => {
      const { collectDuration, setupDuration, duration } = module.diagnostic();
      return {
        name: relative(process.cwd(), module.moduleId),
        ms: collectDuration + setupDuration + duration,
      };
    });
    const all = files.reduce((sum, { ms }) => sum + ms, 0);
    console.log(`The ${TOLD} of ${files.length} files that took most, of ${seconds(all)} s together:`);
    for (const { name, ms } of files.sort((a, b) => b.ms - a.ms).slice(0, TOLD))
      console.log(`  ${seconds(ms).padStart(6)} s  ${((100 * ms) / all).toFixed(0).padStart(2)} %  ${name}`);
  }
}

function seconds(ms: number): string {
  return (ms / 1000).toFixed(1);
}
