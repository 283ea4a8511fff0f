import type { Result } from "../../setup/types/types.ts";
import type { ShareOfCells } from "../../studies/chart/chartCells.ts";
import type { AxisAsk, ChartAsk } from "../../studies/chart/chartTypes.ts";
import { type AxisSubject, readAxis, readAxisTable } from "../../studies/chart/readAxis.ts";
import { LIST_TOO_LARGE, NO_LIST_FILE, openMend } from "../../studies/wording/fileMends.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { ReadRefused } from "../disk/readBytes.ts";
import { InputError } from "./inputError.ts";
import { readLength } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";
import type { AlignedOptions } from "./sharedOptions.ts";

export interface ChartOptions extends AlignedOptions {
  readonly x?: string;
  readonly y?: string;
  readonly heights?: string;
  readonly lock: string;
  readonly csv?: true;
  readonly shard?: string;
}

/** Cells of a chart: each is a truck to be put together and looked at. */
const MOST_CELLS = 250_000;

/** Runs that share a chart: a job runner numbers its machines far below it. */
const MOST_SHARDS = 10_000;

/** Bytes. A list of all tires ever made has fewer. */
const MOST_BYTES = 8 * 1024 * 1024;

/** The chart that the options ask for. @throws InputError for the first that is wrong */
export function askedChart(truck: Truck, subject: AxisSubject, options: ChartOptions): ChartAsk {
  const x = askedAxis(truck, subject, "--x", options.x);
  const y = askedAxis(truck, subject, "--y", options.y);
  const cells = x.entries.length * y.entries.length;
  if (cells > MOST_CELLS)
    throw InputError.ofOption(
      truck.file,
      "--y",
      options.y!,
      `makes ${cells.toLocaleString("en-US")} cells with --x, and a chart has at most ${MOST_CELLS.toLocaleString("en-US")}; give fewer values`,
    );
  if (x.key === y.key)
    throw InputError.ofOption(truck.file, "--y", options.y!, "is the same field as --x; name another");
  return { x, y, travel: askedHeights(truck, options.heights), lock: askedLock(truck, options.lock) };
}

/** @throws InputError */
export function askedShard({ file }: Truck, text: string | undefined): ShareOfCells | null {
  if (text === undefined) return null;
  const [, at, of] = /^\s*(\d{1,5})\s*\/\s*(\d{1,5})\s*$/.exec(text) ?? [];
  const shard = { at: Number(at) - 1, of: Number(of) };
  if (shard.at >= 0 && shard.at < shard.of && shard.of <= MOST_SHARDS) return shard;
  throw InputError.ofOption(file, "--shard", text, "must be K/N, the K-th of N runs, such as 1/8");
}

function askedAxis(truck: Truck, subject: AxisSubject, option: string, text: string | undefined): AxisAsk {
  if (text === undefined)
    throw InputError.ofOption(
      truck.file,
      option,
      null,
      "is missing; name a field and its values, such as wheel.backspacing=3:6:1/8",
    );
  const split = text.indexOf("=");
  if (split < 1)
    throw InputError.ofOption(
      truck.file,
      option,
      text,
      "must be FIELD=VALUES, such as wheel.backspacing=3:6:1/8",
    );
  const key = text.slice(0, split).trim();
  const values = text.slice(split + 1).trim();
  if (!values.startsWith("@")) return accepted(truck.file, option, text, readAxis(key, values, subject));
  const list = values.slice(1);
  return accepted(list, option, text, readAxisTable(key, listText(truck, list), subject));
}

function accepted(file: string, option: string, text: string, read: Result<AxisAsk>): AxisAsk {
  if (read.ok) return read.value;
  const { key, value, mend } = read.issues[0]!;
  throw new InputError([
    { file, key: `${option} ${key}`, value: value === "" ? "" : value, mend: mend === "" ? text : mend },
  ]);
}

function listText({ inputs }: Truck, file: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(inputs.read(file, MOST_BYTES));
  } catch (error) {
    throw InputError.ofFile(file === "" ? '""' : file, listMend(error));
  }
}

function listMend(error: unknown): string {
  if (error instanceof ReadRefused) return error.why === "no file" ? NO_LIST_FILE : LIST_TOO_LARGE;
  const { code } = error as NodeJS.ErrnoException;
  if (code === "ERR_ENCODING_INVALID_ENCODED_DATA") return "is not UTF-8 text; save it as plain UTF-8";
  if (code === undefined) throw error;
  return openMend(code);
}

function askedHeights(truck: Truck, text: string | undefined): ChartAsk["travel"] {
  if (text === undefined) return null;
  const { file } = truck;
  const parts = text.split(":");
  if (parts.length > 2)
    throw InputError.ofOption(
      file,
      "--heights",
      text,
      'must be FROM:TO, travels or stances, such as "driving:aired out"',
    );
  const [from, to] = [parts[0]!, parts[1] ?? parts[0]!].map((part) => heightOf(truck, part.trim(), text));
  return { low: Math.min(from!, to!), high: Math.max(from!, to!) };
}

/** mm. A stance's, or the travel itself. */
function heightOf({ file, model }: Truck, part: string, text: string): number {
  const { stances, units } = model.setup;
  const stance = stances.find(({ name }) => name === part);
  if (stance !== undefined) return stance.travel;
  if (/^[^\d.+-]/.test(part)) {
    const names = stances.map(({ name }) => JSON.stringify(name)).join(", ");
    const mend = names === "" ? "the file has no stances; give travels" : `the file's stances are ${names}`;
    throw InputError.ofOption(file, "--heights", text, `there is no stance ${JSON.stringify(part)}; ${mend}`);
  }
  return readLength(part, units, { file, option: "--heights", value: text });
}

function askedLock({ file }: Truck, text: string): number {
  const read = parseNumber(text);
  if (read.ok && read.value > 0 && read.value <= 1) return read.value;
  throw InputError.ofOption(
    file,
    "--lock",
    text,
    "is a share of full lock either way, more than 0 and at most 1, such as 0.5",
  );
}
