// Reads Vitest's JSON report and prints "passed failed not-run", in numbers; then a line for each test that failed.
// No report: 0 0 0.
import { existsSync, readFileSync } from "node:fs";
import { relative } from "node:path";

const path = process.argv[2];
const report =
  path !== undefined && existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : { testResults: [] };
const count = { passed: 0, failed: 0, notRun: 0 };
const red = [];
for (const file of report.testResults) {
  const name = relative(process.cwd(), file.name);
  const failedBefore = count.failed;
  for (const { status, fullName, failureMessages } of file.assertionResults) {
    if (status === "passed") count.passed++;
    else if (status === "failed") {
      count.failed++;
      red.push(`${name} > ${fullName}: ${firstLine(failureMessages?.[0])}`);
    } else count.notRun++;
  }
  // The file could not be loaded, or a hook of it failed: no test in it says so.
  if (file.status === "failed" && count.failed === failedBefore) {
    count.failed++;
    red.push(`${name}: ${firstLine(file.message)}`);
  }
}
console.log(count.passed, count.failed, count.notRun);
for (const line of red) console.log(line);

function firstLine(message = "") {
  return message.split("\n", 1)[0].slice(0, 200);
}
