import { WIDEST_KERF } from "../../studies/drawings/kerf.ts";
import type { DrawingAsk } from "../../studies/drawings/shopDrawings.ts";
import { PAPER_NAMES, type PaperName } from "../../studies/drawings/shopFile.ts";
import { kerfMend } from "../../studies/wording/drawingWords.ts";
import { nearestWord } from "../../units/words.ts";
import { InputError } from "./inputError.ts";
import { readLength } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";
import type { SharedOptions } from "./sharedOptions.ts";

export interface SheetOptions extends SharedOptions {
  readonly out?: string;
  readonly force?: boolean;
  readonly paper?: string;
  readonly kerf: string;
  readonly angle: string;
}

const ANGLES = ["first", "third"] as const;

/** What a `sheet` run is asked for. @throws InputError for the first option that is wrong */
export function askedSheet(
  { file, model }: Truck,
  options: SheetOptions,
): DrawingAsk & { readonly out: string } {
  const { units } = model.setup;
  const { out, paper, kerf, angle } = options;
  const refuse = (option: string, value: string | null, mend: string) =>
    InputError.ofOption(file, option, value, mend);
  if (out === undefined || out === "")
    throw refuse("--out", out ?? null, "is missing; name a folder for the drawings, such as drawings");
  const paperName = askedPaper(file, units, paper);
  const angleName = ANGLES.find((name) => name === angle.toLowerCase());
  if (angleName === undefined) throw refuse("--angle", angle, oneOf(angle, ANGLES));
  const width = readLength(kerf, units, { file, option: "--kerf", value: kerf });
  if (!(width >= 0 && width <= WIDEST_KERF)) throw refuse("--kerf", kerf, kerfMend(WIDEST_KERF));
  return { out, paper: paperName, angle: angleName, kerf: width };
}

/** The paper that is asked for; letter for a setup in inches and A4 for one in millimeters where none is. @throws InputError */
export function askedPaper(file: string, units: "in" | "mm", asked: string | undefined): PaperName {
  const paper = asked ?? (units === "in" ? "letter" : "a4");
  const name = PAPER_NAMES.find((one) => one === paper.toLowerCase());
  if (name === undefined) throw InputError.ofOption(file, "--paper", paper, oneOf(paper, PAPER_NAMES));
  return name;
}

function oneOf(value: string, names: readonly string[]): string {
  const near = nearestWord(value, [...names]);
  return near === null ? `must be one of ${names.join(", ")}` : `did you mean "${near}"?`;
}
