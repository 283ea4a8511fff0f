// Reads Vitest's JSON report and prints "passed failed not-run", in numbers. No report: 0 0 0.
import { existsSync, readFileSync } from "node:fs";

const path = process.argv[2];
const report =
  path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : { testResults: [] };
const count = { passed: 0, failed: 0, notRun: 0 };
for (const file of report.testResults) {
  const failedBefore = count.failed;
  for (const { status } of file.assertionResults) {
    if (status === "passed") count.passed++;
    else if (status === "failed") count.failed++;
    else count.notRun++;
  }
  // The file could not be loaded, or a hook of it failed: no test in it says so.
  if (file.status === "failed" && count.failed === failedBefore) count.failed++;
}
console.log(count.passed, count.failed, count.notRun);
