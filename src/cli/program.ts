import { Command } from "commander";
import { type ExitCode, NO_ANSWER } from "./asked/inputError.ts";
import type { Terminal } from "./asked/terminal.ts";
import { ownPackage } from "./disk/ownPackage.ts";
import { addAir } from "./verbs/air.ts";
import { addAlign } from "./verbs/align.ts";
import { addAsBuilt } from "./verbs/asBuilt.ts";
import { addChange } from "./verbs/change.ts";
import { addChart } from "./verbs/chart.ts";
import { addCheck } from "./verbs/check.ts";
import { addEnvelope } from "./verbs/envelope.ts";
import { addFloor } from "./verbs/floor.ts";
import { addGeometry } from "./verbs/geometry.ts";
import { addLimits } from "./verbs/limits.ts";
import { addLoads } from "./verbs/loads.ts";
import { addMap } from "./verbs/map.ts";
import { addMeasure } from "./verbs/measure.ts";
import { addOdds } from "./verbs/odds.ts";
import { addOrder } from "./verbs/order.ts";
import { addPose } from "./verbs/pose.ts";
import { addSheet } from "./verbs/sheet.ts";
import { addSolve } from "./verbs/solve.ts";
import { addSweep } from "./verbs/sweep.ts";
import { addWindow } from "./verbs/window.ts";

const AFTER_HELP = `
Examples:
  wellsweep check truck.json                              what touches what, where, at which height and lock
  wellsweep check truck.json --variant "narrow hub face"  the same with one of the file's variants
  wellsweep pose truck.json --travel "3 1/4" --steer 1    everything at one height and steering input
  wellsweep sweep truck.json --csv > truck.csv            tables for a spreadsheet
  wellsweep map truck.json                                how far it steers at each height, how low it goes
  wellsweep envelope truck.json --out swept.stl --stance driving  the space the tires sweep, as a surface
  wellsweep align truck.json                              shims and tie rods for the setup's alignment targets
  wellsweep geometry truck.json                           roll center, bump steer, Ackermann, turning circle
  wellsweep limits truck.json                             joints, stops, shocks, air springs: what is met first
  wellsweep floor truck.json                              stances in shop measures, ground clearance, body roll
  wellsweep asbuilt truck.json --jig                      the jig sheet; without --jig what was read, and what it does
  wellsweep loads truck.json                              forces in the joints, shares of yield, weight: no verdict
  wellsweep air truck.json --pressure 60                  pressures, ride, and where it stands at 60 psi
  wellsweep measure truck.json                            from tape to truck: points, what to read again, what next
  wellsweep order truck.json                              the order sheet of a drop knuckle
  wellsweep sheet truck.json --out drawings               drawing, cut list, templates, plates, solid
  wellsweep window truck.json --field knuckle.hubFace     how narrow and how wide it may be, and what sets each end
  wellsweep solve truck.json --field knuckle.pinAngle --for camber=-0.5   the value that gives what is wanted
  wellsweep chart truck.json --x wheel.backspacing=3:6:1/2 --y knuckle.hubFace=5:7:1/2   which combinations clear
  wellsweep change truck.json --budget 60                 the smallest change of each field that makes it clear
  wellsweep odds truck.json                               how likely it clears, by how well each number is known

Exit codes: 0 fine, 1 something rubs or a limit is passed, 2 ${NO_ANSWER}.
Only an answer ends in 0 or 1; a run that is interrupted ends in 130, as the shell counts.

FILE is a setup, or - for standard input. Lengths without a unit are in the file's units; "5 5/8 in",
'5-5/8"' and "142.9 mm" always work. More about a verb: wellsweep VERB --help`;

/** The whole command line; each verb hands its exit code to `end`. */
export function makeProgram(terminal: Terminal, end: (code: ExitCode) => void): Command {
  const program = new Command("wellsweep")
    .description(
      "Will these wheels and tires clear? With this knuckle, wheel and tire: what touches what, where, and at which height and steering angle.",
    )
    .usage("VERB FILE [options]")
    .version(ownPackage().version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .exitOverride()
    .configureOutput({
      writeOut: terminal.writeOut,
      writeErr: () => {}, // told on one line by whoever catches the error
    })
    .addHelpText("after", AFTER_HELP);
  for (const add of [
    addPose,
    addCheck,
    addSweep,
    addMap,
    addEnvelope,
    addGeometry,
    addAlign,
    addLimits,
    addAir,
    addFloor,
    addLoads,
    addAsBuilt,
    addSheet,
    addOrder,
    addWindow,
    addSolve,
    addChart,
    addChange,
    addOdds,
    addMeasure,
  ])
    add(program, terminal, end);
  return program;
}
