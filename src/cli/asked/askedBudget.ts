import { Budget } from "../../studies/numeric/budget.ts";
import { InputError } from "./inputError.ts";
import { readPlainNumber } from "./readNumbers.ts";
import type { SharedOptions } from "./sharedOptions.ts";
import type { Terminal } from "./terminal.ts";

/** What a verb may spend from now on, as `--budget` says. @throws InputError */
export function askedBudget(file: string, { budget }: SharedOptions, { clock }: Terminal): Budget {
  const seconds = readPlainNumber(budget);
  if (seconds > 0 && seconds < Number.POSITIVE_INFINITY) return Budget.of(seconds, clock ?? processorMs);
  const mend = "must be a number of seconds above 0, such as 10 or 0.5";
  throw InputError.ofOption(file, "--budget", budget, mend);
}

/** Milliseconds this process has had of a processor: what others on the machine do does not count. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
