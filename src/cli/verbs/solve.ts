import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { solveJson } from "../../studies/documents/solveJson.ts";
import { solveField } from "../../studies/solve/solveOf.ts";
import { SOLVE_TARGETS, type SolveTarget, targetMeasure } from "../../studies/solve/solveTypes.ts";
import { formatOf } from "../../studies/wording/lengths.ts";
import { nearestWord } from "../../units/words.ts";
import { askedField, type FieldOptions, readMeasure } from "../asked/askedField.ts";
import { askedHeight, type HeightOptions } from "../asked/askedHeight.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedBudget } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { solveTable } from "../output/solveTable.ts";

interface AskedSolve extends FieldOptions, HeightOptions {
  readonly for: string;
}

const EXAMPLES = `
Examples:
  wellsweep solve truck.json --field knuckle.pinAngle --for camber=-0.5       the pin angle that gives half a degree in at the top
  wellsweep solve truck.json --field knuckle.hubFace --for scrubRadius="1/2"  the hub-face distance that gives that scrub radius
  wellsweep solve truck.json --field "truck.steering.innerEnd[2]" --for bumpSteer   the height with the least bump steer
  wellsweep solve truck.json --field knuckle.pinAngle --for camber=-0.5 --stance "aired out"   the same at another height
  wellsweep solve truck.json --field wheel.backspacing --for gap="3/8" --json       for a program

What may be wanted: ${SOLVE_TARGETS.slice(0, -1).join(", ")}, each with =VALUE, and ${SOLVE_TARGETS.at(-1)} without.
Numbers of a pose are those as measured, or at --stance or --travel, wheels straight ahead.

Exit codes: 0 a value gives it, 1 none was found, 2 ${NO_ANSWER}.`;

/** `solve`: which values of one field give what is wanted. */
export function addSolve(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("solve"))
    .description(
      "The value of one length or angle that gives a wanted camber, scrub radius, trail, gap …, or the least bump steer.",
    )
    .requiredOption("--field <KEY>", "a length or an angle of the file, such as knuckle.pinAngle")
    .requiredOption("--for <TARGET>", "what is wanted: camber=-0.5, scrubRadius=1/2, gap=1/4, bumpSteer …")
    .option("--from <VALUE>", "least value to look at; default 6 in or 10 degrees below the file's")
    .option("--to <VALUE>", "greatest value to look at; default 6 in or 10 degrees above the file's")
    .option(
      "--stance <NAME>",
      "the height of a number at a pose: one of the file's stances; default as measured",
    )
    .option("--travel <LEN>", "the same as wheel travel, + = bump")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: AskedSolve) => end(runSolve(file, options, terminal)));
}

function runSolve(file: string, options: AskedSolve, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const { setup } = model;
  const { field, subject, range } = askedField(truck, options);
  const target = askedTarget(truck, options);
  if (target.of === "gap" && field.key === "allowance")
    throw InputError.ofOption(truck.file, "--field", field.key, "moves no metal; name a field that does");
  const budget = askedBudget(truck.file, options, terminal);
  const report = solveField(subject, field, target, {
    ...range,
    budget,
    // A range that was written is the one that is meant.
    looksOn: options.from === undefined && options.to === undefined,
    tellsAlso: true,
  });
  const speech = { model, format: formatOf(setup), document: subject.document };
  terminal.writeOut(
    options.json ? documentText(solveJson(report, setup.units), truck) : solveTable(report, speech),
  );
  return report.found.length > 0 ? ExitCode.Fine : ExitCode.Rubs;
}

/** `camber=-0.5` as a target, at the height that is asked for. @throws InputError */
function askedTarget(truck: Truck, options: AskedSolve): SolveTarget {
  const target = readTarget(truck, options.for);
  const at = askedHeight(truck, options);
  if (at === null) return target;
  if (target.of === "gap" || target.of === "bumpSteer") {
    const [option, value] =
      options.stance === undefined ? ["--travel", options.travel] : ["--stance", options.stance];
    throw InputError.ofOption(
      truck.file,
      option,
      value ?? "",
      `goes with a number at a pose; ${target.of} is over all travel`,
    );
  }
  return { ...target, at };
}

function readTarget(truck: Truck, text: string): SolveTarget {
  const { file } = truck;
  const refuse = (mend: string) => InputError.ofOption(file, "--for", text, mend);
  const [name = "", ...rest] = text.split("=");
  const value = rest.join("=");
  const of = SOLVE_TARGETS.find((one) => one === name.trim());
  if (of === undefined) {
    const near = nearestWord(name.slice(0, 40), SOLVE_TARGETS);
    throw refuse(
      near === null ? `write one of ${SOLVE_TARGETS.join(", ")}` : `no such target; did you mean "${near}"?`,
    );
  }
  if (of === "bumpSteer") {
    if (rest.length > 0) throw refuse("solve looks for the least there is; write bumpSteer without a value");
    return { of };
  }
  if (rest.length === 0)
    throw refuse(`write what is wanted behind it: ${of}=${EXAMPLE_VALUE[targetMeasure({ of })]}`);
  const wanted = readMeasure(targetMeasure({ of }), value, truck, { file, option: "--for", value: text });
  if (of === "gap" && !(wanted >= 0)) throw refuse("a gap to keep is at least 0");
  return { of, value: wanted };
}

const EXAMPLE_VALUE = { angle: "-0.5", length: "1/4" } as const;
