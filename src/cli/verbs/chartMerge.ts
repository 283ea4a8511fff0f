import type { Command } from "commander";
import { chartDocument } from "../../studies/chart/chartDocument.ts";
import {
  missingShardsMend,
  NO_LIST_FILE,
  openMend,
  unlikeShardMend,
} from "../../studies/wording/fileMends.ts";
import { type ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import type { Terminal } from "../asked/terminal.ts";
import { ReadRefused, readFileBytes } from "../disk/readBytes.ts";
import { readShard, type ShardFile } from "../output/chartShard.ts";
import { chartExitCode, chartText } from "../output/chartTable.ts";

/** Bytes. The largest chart in one piece is far smaller. */
const MOST_BYTES = 256 * 1024 * 1024;

interface MergeOptions {
  readonly json?: true;
  readonly csv?: true;
}

/** `chart merge`: the pieces of a chart put together. */
export function addMerge(chart: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  chart
    .command("merge")
    .description("Puts the pieces that chart --shard printed together, into the chart that one run gives.")
    .argument("FILES...", "one file a piece, in any order")
    .option("--json", "print one JSON document")
    .option("--csv", "print one table for a spreadsheet")
    .addHelpText("after", `\nExit codes: as of chart; 2 ${NO_ANSWER}.`)
    .action((files: readonly string[], _: unknown, command: Command) =>
      // An option that both verbs have is the outer one's to commander.
      end(runMerge(files, command.optsWithGlobals(), terminal)),
    );
}

function runMerge(files: readonly string[], options: MergeOptions, terminal: Terminal): ExitCode {
  if (options.json && options.csv)
    throw InputError.ofOption(files[0]!, "--csv", null, "cannot be used with --json; choose one of them");
  const shards = files.map((file) => readPiece(file));
  const [first] = shards;
  const headOf = ({ head, beside, of }: ShardFile) => JSON.stringify([head, beside, of]);
  const strange = shards.findIndex((shard) => headOf(shard) !== headOf(first!));
  if (strange >= 0) throw InputError.ofFile(files[strange]!, unlikeShardMend(files[0]!));
  const { head, of, beside } = first!;
  const missing = Array.from({ length: of }, (_, i) => i).filter((at) =>
    shards.every((shard) => shard.at !== at),
  );
  if (missing.length > 0)
    throw InputError.ofFile(
      files[0]!,
      missingShardsMend(
        missing.map((at) => at + 1),
        of,
      ),
    );
  const cells = new Map(shards.flatMap((shard) => [...shard.cells]));
  const whole = chartDocument(
    head,
    [...cells].sort(([a], [b]) => a - b).map(([, cell]) => cell),
  );
  terminal.writeOut(chartText(whole, beside, options));
  return chartExitCode(whole);
}

function readPiece(file: string): ShardFile {
  const read = readShard(pieceText(file));
  if (typeof read === "string") throw InputError.ofFile(file, read);
  return read;
}

function pieceText(file: string): string {
  try {
    return new TextDecoder("utf-8").decode(readFileBytes(file, MOST_BYTES).bytes);
  } catch (error) {
    if (error instanceof ReadRefused) throw InputError.ofFile(file, NO_LIST_FILE);
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw InputError.ofFile(file === "" ? '""' : file, openMend(code));
  }
}
