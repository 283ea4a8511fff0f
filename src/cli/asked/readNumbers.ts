import type { LengthUnit } from "../../setup/types/types.ts";
import { Budget } from "../../studies/numeric/budget.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { processorMs } from "../threads/processorMs.ts";
import { InputError } from "./inputError.ts";
import type { SharedOptions } from "./sharedOptions.ts";
import type { Terminal } from "./terminal.ts";

/** Where an option stands, for the error: its file, its name and its whole value. */
export interface OptionPlace {
  readonly file: string;
  readonly option: string;
  readonly value: string;
}

/** A length an option holds, in mm; without a unit it is in the file's. @throws InputError */
export function readLength(text: string, units: LengthUnit, place: OptionPlace): number {
  const length = parseLength(text, units);
  if (!length.ok) throw refused(place, length.mend);
  return length.mm;
}

/** A number without a unit; NaN for anything else. */
function readPlainNumber(text: string): number {
  const read = parseNumber(text);
  return read.ok ? read.value : Number.NaN;
}

/** A steering input an option holds, −1 … +1. @throws InputError */
export function readSteer(text: string, place: OptionPlace): number {
  const steer = readPlainNumber(text);
  if (!(steer >= -1 && steer <= 1)) {
    throw refused(place, "steer is a share of full lock, from -1 (full right) to 1 (full left), such as 0.5");
  }
  return steer + 0; // + 0 turns −0 into 0
}

/** A whole number an option holds. @throws InputError */
export function readWhole(text: string, least: number, most: number, place: OptionPlace): number {
  const number = readPlainNumber(text);
  if (!(Number.isInteger(number) && number >= least && number <= most)) {
    throw refused(place, `must be a whole number from ${least} to ${most}`);
  }
  return number;
}

function refused({ file, option, value }: OptionPlace, mend: string): InputError {
  return InputError.ofOption(file, option, value, mend);
}

/** What a verb may spend from now on, as `--budget` says. @throws InputError */
export function askedBudget(file: string, options: SharedOptions, { clock }: Terminal): Budget {
  return Budget.of(askedSeconds(file, options), clock ?? processorMs);
}

/** The same as a number. @throws InputError */
export function askedSeconds(file: string, { budget }: SharedOptions): number {
  const seconds = readPlainNumber(budget);
  if (seconds > 0 && seconds < Number.POSITIVE_INFINITY) return seconds;
  const mend = "must be a number of seconds above 0, such as 10 or 0.5";
  throw InputError.ofOption(file, "--budget", budget, mend);
}
