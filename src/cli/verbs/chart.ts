import type { Command } from "commander";
import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import { chartCells, type ShareOfCells } from "../../studies/chart/chartCells.ts";
import { type CellDocument, chartDocument, chartHead } from "../../studies/chart/chartDocument.ts";
import { type ChartSearch, chartSearch } from "../../studies/chart/chartSearch.ts";
import { documentOf } from "../../studies/documents/documentText.ts";
import { axisName } from "../../studies/wording/chartWords.ts";
import { askedChart, askedShard, type ChartOptions } from "../asked/askedChart.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget, askedSeconds } from "../asked/readNumbers.ts";
import { readTruck } from "../asked/readTruck.ts";
import { withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { shardText } from "../output/chartShard.ts";
import { chartExitCode, chartText } from "../output/chartTable.ts";
import { heading } from "../output/textTable.ts";
import type { SharedAsk } from "../threads/sharedJobs.ts";
import { addMerge } from "./chartMerge.ts";

const EXAMPLES = `
Examples:
  wellsweep chart truck.json --x wheel.backspacing=3:6:1/2 --y "tire.size=P215/70R15, P235/70R15, P255/70R15"
  wellsweep chart truck.json --x wheel.backspacing=3:6:1/2 --y knuckle.hubFace=5:7:1/2 --heights "driving:aired out" --lock 0.5
  wellsweep chart truck.json --x tire=@tires.csv --y wheel=@wheels.csv --csv > chart.csv
  wellsweep chart truck.json --x tire=@tires.csv --y wheel=@wheels.csv --shard 1/8 --budget 3600 > piece-1.jsonl
  wellsweep chart merge piece-*.jsonl --json

Values are FROM:TO:STEP, or a list with commas (semicolons where a value holds a comma), or @LIST.csv: a column named as the
field; of tire and wheel a column for each of their keys; and one called name, if they have names.

Exit codes: 0 the truck as it stands clears or is close; 1 it rubs, or is not on the chart and nothing on it clears or is
close; 2 ${NO_ANSWER}. A shard is only a piece of an answer and ends in 0.`;

/** `chart`: two fields, or two lists, against each other. */
export function addChart(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  const chart = withAligned(program.command("chart"))
    .description("What clears of all combinations of two fields, or of a list of tires and one of wheels.")
    .option("--x <FIELD=VALUES>", "across: a field of the file, or tire or wheel, and its values")
    .option("--y <FIELD=VALUES>", "down: another one")
    .option("--heights <FROM:TO>", "only between these travels or stances; default all travel")
    .option("--lock <SHARE>", "only up to this share of full lock either way", "1")
    .option("--csv", "print one table for a spreadsheet, a line a combination")
    .option("--shard <K/N>", "work out every N-th combination, from the K-th on, and print JSON lines")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: ChartOptions) => end(runChart(file, options, terminal)));
  addMerge(chart, terminal, end);
}

function runChart(file: string, options: ChartOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { document, model } = truck;
  const { setup } = model;
  const variant = options.variant ?? null;
  const shown = variant === null ? withoutVariants(document) : effectiveDocument(document, variant);
  const isAligned = options.aligned === true;
  const subject = { document: shown, setup, file: truck.file, isAligned };
  const ask = askedChart(truck, subject, options);
  const shard = askedShard(truck, options.shard);
  if (shard !== null && (options.json || options.csv))
    throw InputError.ofOption(
      truck.file,
      "--shard",
      options.shard!,
      "prints JSON lines; give --json or --csv to chart merge",
    );
  if (options.json && options.csv)
    throw InputError.ofOption(truck.file, "--csv", null, "cannot be used with --json; choose one of them");
  const found = chartSearch(subject, ask);
  if (!found.ok) throw InputError.ofOption(truck.file, "--x", ask.x.key, found.issues[0]!.mend);
  const search = found.value;
  const names = { of: heading(setup), x: axisName(ask.x.key, shown), y: axisName(ask.y.key, shown) };
  const [column, row] = [search.presentOn("x"), search.presentOn("y")];
  const head = chartHead(setup, ask, column === null || row === null ? null : { column, row }, names);
  const cells = workedOut(search, shard, { subject, ask }, options, terminal);
  if (shard !== null) {
    terminal.writeOut(shardText({ ...shard, head, beside: documentOf({}, truck), cells }));
    return ExitCode.Fine;
  }
  const chart = chartDocument(
    head,
    [...cells].sort(([a], [b]) => a - b).map(([, cell]) => cell),
  );
  terminal.writeOut(chartText(chart, documentOf({}, truck), options));
  return chartExitCode(chart);
}

/** Cells below which starting threads takes longer than they save. */
const FEW_CELLS = 100;

/** A share of the cells; all of them by several threads where there are some. */
function workedOut(
  search: ChartSearch,
  shard: ShareOfCells | null,
  asked: SharedAsk<"chart">,
  options: ChartOptions,
  terminal: Terminal,
): ReadonlyMap<number, CellDocument> {
  const { shareOut, showProgress } = terminal;
  const { setup, file } = asked.subject;
  const onProgress = (done: number) => showProgress?.(`${Math.floor(100 * done)}% of the combinations`);
  const share = shard ?? { at: 0, of: 1 };
  const cells =
    shareOut !== undefined && shard === null && search.count >= FEW_CELLS
      ? new Map(
          shareOut("chart", asked, askedSeconds(file, options), onProgress).flatMap((found) => [...found]),
        )
      : chartCells(search, share, setup.units, askedBudget(file, options, terminal), onProgress);
  showProgress?.("");
  return cells;
}
