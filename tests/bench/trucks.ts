import { Budget } from "../../src/studies/numeric/budget.ts";
import { checkClearance, DEFAULT_TOLERANCE } from "../../src/studies/reports/check.ts";
import { toleranceAt } from "../../src/studies/search/deepTolerance.ts";
import { wholeTrucks } from "../reference/wholeTrucks.ts";
import { processorTime } from "./processorTime.ts";
import { printTargets } from "./targets.ts";
import { withLimits } from "./withLimits.ts";

/**
 * Checks random trucks with every block, whose limits cut the range, and prints how long each took and what it
 * reached, then what limits, springs and shocks add to a check. `npm run bench:trucks -- COUNT FROM` checks that many, from the FROMth on.
 */

const ROUNDING = 1 + 1e-6;

/** Seconds; the command line's own. */
const SECONDS = 10;

const [count = "100", from = "0"] = process.argv.slice(2);
const trucks = wholeTrucks(Number(from) + Number(count)).slice(Number(from));
const times: number[] = [];
let loose = 0;
for (const [i, model] of trucks.entries()) {
  const start = processorTime();
  const report = checkClearance(model, { budget: Budget.of(SECONDS, () => processorTime() / 1e6) });
  const seconds = (processorTime() - start) / 1e9;
  times.push(seconds);
  const open = report.parts.filter(
    (entry) => entry.tolerance > toleranceAt(entry.gap, DEFAULT_TOLERANCE) * ROUNDING,
  );
  if (open.length > 0) loose++;
  if (seconds < 1 && open.length === 0) continue;
  const worst = open.map(
    ({ part, side, tolerance, gap }) => `${part} ${side} ${tolerance.toFixed(2)} at ${gap.toFixed(1)}`,
  );
  console.log(
    `${i + Number(from)}: ${seconds.toFixed(2)} s${report.cutShort ? ", cut short" : ""}; ${worst.join("; ")}`,
  );
}
times.sort((a, b) => a - b);
const at = (share: number) => times[Math.min(times.length - 1, Math.floor(share * times.length))]!.toFixed(2);
console.log(
  `${times.length} trucks: half within ${at(0.5)} s, nine in ten within ${at(0.9)} s, all within ${at(1)} s`,
);
console.log(`${loose} of them not to the tolerance asked for in every part`);
printTargets(withLimits());
