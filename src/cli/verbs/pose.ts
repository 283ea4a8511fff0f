import type { Command } from "commander";
import { documentText } from "../../studies/documents/documentText.ts";
import { poseJson } from "../../studies/documents/poseJson.ts";
import { floorAt } from "../../studies/floor/floorAt.ts";
import { limitsAtPose, limitsPastAt } from "../../studies/limits/limitsPastAt.ts";
import { gapsAt } from "../../studies/reports/gapsAt.ts";
import type { FloorPose } from "../../studies/stances/floorPose.ts";
import { CAUTIONS, FLOOR_CAUTIONS } from "../../studies/wording/cautions.ts";
import { type ApartPose, type SolvedPose, solveApart } from "../../suspension/solvePose.ts";
import { ExitCode, InputError, NO_ANSWER } from "../asked/inputError.ts";
import { askedPose, poseAt, reachMend } from "../asked/poseAsked.ts";
import { askedBudget, type OptionPlace, readLength, readSteer } from "../asked/readNumbers.ts";
import { readTruck, type Truck } from "../asked/readTruck.ts";
import { type AlignedOptions, withAligned } from "../asked/sharedOptions.ts";
import type { Terminal } from "../asked/terminal.ts";
import { poseTable } from "../output/poseTable.ts";
import { cutShortLine, heading } from "../output/textTable.ts";

interface PoseOptions extends AlignedOptions {
  readonly travel?: string;
  readonly leftTravel?: string;
  readonly rightTravel?: string;
  readonly steer?: string;
  readonly at?: readonly string[];
  readonly named?: string;
  readonly floor?: true;
}

type AnyPose = SolvedPose | ApartPose;

const EXAMPLES = `
Examples:
  wellsweep pose truck.json                                 as measured, straight ahead
  wellsweep pose truck.json --travel "3 1/4" --steer -0.5   half of right lock, 3 1/4 up
  wellsweep pose truck.json --travel "-95 mm" --json        full precision, for a program
  wellsweep pose truck.json --left-travel 1 --right-travel -1   each wheel at its own height, on the floor
  wellsweep pose truck.json --named "aired out"             a stance of the file by its name, or one of its poses
  wellsweep pose truck.json --at -4,0 --at "-3 3/4,0.5" --at 0,1

Exit codes: 0 fine, 1 something rubs there, 2 ${NO_ANSWER}, a pose out of reach too.`;

/** `pose`: everything at one or more heights and steering inputs. */
export function addPose(program: Command, terminal: Terminal, end: (code: ExitCode) => void): void {
  withAligned(program.command("pose"))
    .description("Where everything stands at one height and steering input, and every gap there.")
    .option("--travel <LEN>", "wheel travel from where the truck was measured, + = bump; default 0")
    .option("--left-travel <LEN>", "the left wheel's own travel; default as --travel")
    .option("--right-travel <LEN>", "the right wheel's own travel; default as --travel")
    .option("--steer <S>", "steering, from -1 (full right) to 1 (full left); default 0")
    .option(
      "--at <TRAVEL,STEER>",
      "a pose, any number of times, instead of --travel and --steer",
      (value: string, before: readonly string[] | undefined) => [...(before ?? []), value],
    )
    .option("--named <NAME>", "a pose or stance of the file by its name, instead of --travel")
    .option("--floor", "give the floor under it too, as with a wheel at its own travel")
    .addHelpText("after", EXAMPLES)
    .action((file: string, options: PoseOptions) => end(runPose(file, options, terminal)));
}

function runPose(file: string, options: PoseOptions, terminal: Terminal): ExitCode {
  const truck = readTruck(file, options, terminal);
  const { model } = truck;
  const poses = askedPoses(truck, options);
  const budget = askedBudget(truck.file, options, terminal);
  const shown = poses.map((pose) => ({
    pose,
    gaps: gapsAt(model, pose, budget),
    floor: options.floor || "travels" in pose ? floorUnder(truck, pose) : null,
  }));
  const cut = budget.cut ? { cutShort: true as const } : {};
  if (options.json) {
    const documents = shown.map(({ pose, gaps, floor }) => poseJson(pose, gaps, model, floor));
    const document = { ...cut, ...(options.at ? { poses: documents } : documents[0]!) };
    terminal.writeOut(documentText(document, truck));
  } else {
    const tables = shown.map(({ pose, gaps, floor }) => poseTable(pose, gaps, model, floor));
    const cautions = shown.some(({ floor }) => floor !== null) ? [CAUTIONS, FLOOR_CAUTIONS] : [CAUTIONS];
    terminal.writeOut(
      [`${heading(model.setup)}\n${cutShortLine("pose", cut)}`, ...tables, ...cautions].join("\n"),
    );
  }
  const rubs = shown.some(({ gaps }) => gaps.some((entry) => entry.gap < 0));
  return rubs || poses.some((pose) => passesLimit(truck, pose)) ? ExitCode.Rubs : ExitCode.Fine;
}

function passesLimit({ model }: Truck, pose: AnyPose): boolean {
  return limitsPastAt(limitsAtPose(model, pose)).length > 0;
}

/** The poses asked for, solved. @throws InputError for the first that cannot be read or reached. */
function askedPoses(truck: Truck, options: PoseOptions): AnyPose[] {
  const { file, model } = truck;
  const { travel, leftTravel, rightTravel, steer, at } = options;
  const { units } = model.setup;
  if (options.named !== undefined) {
    for (const [option, value] of [
      ["--travel", travel],
      ["--left-travel", leftTravel],
      ["--right-travel", rightTravel],
      ["--at", at?.[0]],
    ] as const)
      if (value !== undefined) throw InputError.ofOption(file, option, value, "cannot be used with --named");
    return [namedPose(truck, options.named, steer)];
  }
  if (at === undefined) {
    const isApart = leftTravel !== undefined || rightTravel !== undefined;
    return [isApart ? askedApart(truck, options) : askedPose(truck, options)];
  }
  for (const [option, value] of [
    ["--travel", travel],
    ["--left-travel", leftTravel],
    ["--right-travel", rightTravel],
    ["--steer", steer],
  ] as const) {
    if (value === undefined) continue;
    throw InputError.ofOption(
      file,
      option,
      value,
      "cannot be used with --at; put both numbers in --at TRAVEL,STEER",
    );
  }
  return at.map((value) => {
    const place = { file, option: "--at", value };
    const comma = value.lastIndexOf(",");
    if (comma < 0) {
      throw InputError.ofOption(
        file,
        "--at",
        value,
        'write travel, a comma and steer, such as --at "-3 3/4,0.5"',
      );
    }
    if (value.indexOf(",") < comma) {
      const mend = "has a comma too many; write decimals with a point here, such as 3.5,0";
      throw InputError.ofOption(file, "--at", value, mend);
    }
    const mm = readLength(value.slice(0, comma), units, place);
    return poseAt(model, mm, readSteer(value.slice(comma + 1), place), { travel: place, steer: place });
  });
}

/**
 * A pose of the file by its name, or a stance. @param steer of the option: instead of the pose's own
 * @throws InputError where there is none, or it is out of reach
 */
function namedPose({ file, model }: Truck, name: string, steer: string | undefined): AnyPose {
  const { poses, stances, units } = model.setup;
  const place = { file, option: "--named", value: name };
  const asked = steer === undefined ? null : readSteer(steer, { file, option: "--steer", value: steer });
  const named = poses.find((pose) => pose.name === name);
  if (named !== undefined) {
    const pose = solveApart(model.frontEnd, named.travels, asked ?? named.steer);
    if (!pose.ok) throw InputError.ofOption(file, "--named", name, reachMend(pose, units));
    return pose;
  }
  const stance = stances.find((one) => one.name === name);
  if (stance !== undefined) return poseAt(model, stance.travel, asked ?? 0, { travel: place, steer: place });
  const names = [...poses, ...stances].map((one) => `"${one.name}"`);
  const mend =
    names.length === 0 ? "the file names no poses or stances" : `must be one of ${names.join(", ")}`;
  throw InputError.ofOption(file, "--named", name, mend);
}

/** Wheels at travels of their own. @throws InputError */
function askedApart({ file, model }: Truck, options: PoseOptions): ApartPose {
  const { travel = "0", steer = "0" } = options;
  const place = (option: "--left-travel" | "--right-travel", value: string | undefined): OptionPlace =>
    value === undefined ? { file, option: "--travel", value: travel } : { file, option, value };
  const places = {
    left: place("--left-travel", options.leftTravel),
    right: place("--right-travel", options.rightTravel),
    steer: { file, option: "--steer", value: steer },
  };
  const { units } = model.setup;
  const travels = {
    left: readLength(places.left.value, units, places.left),
    right: readLength(places.right.value, units, places.right),
  };
  const pose = solveApart(model.frontEnd, travels, readSteer(steer, places.steer));
  if (pose.ok) return pose;
  const { option, value } = places[pose.along === "steer" ? "steer" : pose.side];
  throw InputError.ofOption(file, option, value, reachMend(pose, units));
}

/** The floor under a pose that is there. */
function floorUnder({ file, model }: Truck, pose: AnyPose): FloorPose {
  const travels = "travels" in pose ? pose.travels : { left: pose.travel, right: pose.travel };
  const floor = floorAt(model, travels, pose.steer);
  if (floor === null) throw InputError.ofOption(file, "--floor", null, "finds no floor under this pose");
  return floor;
}
