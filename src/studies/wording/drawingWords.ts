import type { Setup } from "../../setup/types/types.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { verdictSentence } from "./verdictSentence.ts";

/**
 * Printed on every drawing of a part. @param scale paper to part: only what is 1:1 has a bar to measure; null = a list or a solid
 */
export function drawnCautions(scale: string | null): readonly [string, string] {
  const cutting =
    scale === null
      ? ""
      : scale === "1:1"
        ? " Measure the print's bar before cutting."
        : " Not to scale for cutting.";
  return [
    "Steering part: cutting and welding it is for licensed, qualified people. Have it reviewed by a licensed engineer; follow local codes.",
    `Dimensions are worked out from the numbers in the setup; they say nothing of strength.${cutting}`,
  ];
}

/** Of drawings that something is cut by. */
export const DRAWING_CAUTIONS = drawnCautions("1:1");

/** How the shop is shown lengths to cut to: to 1/32 in, or a tenth of a millimeter. */
export function cutFormat(units: LengthFormat["units"]): LengthFormat {
  return { units, fraction: 32 };
}

/** Beside the bar on every sheet. */
export function barWords(units: LengthFormat["units"]): string {
  return `${units === "in" ? "4 in" : "100 mm"}: measure this bar; if it is off, the print is not 1:1`;
}

/** Which of several sheets that are laid together. Rows and columns count from the lower left. */
export function sheetOfWords(sheet: number, count: number, row: number, column: number): string {
  return `Sheet ${sheet} of ${count} (row ${row} from below, column ${column} from the left; lay crosses on crosses)`;
}

/** Stands at the foot of a page with letters that a PDF's standard font does not have. */
export const LETTERS_NOTE =
  "In a PDF, letters that its font does not have are spelled with the nearest it has; a question mark stands for one that has none.";

/** Letters for which a question mark stands in the PDFs; "" = there are none. */
export function unwrittenSentence(letters: readonly string[]): string {
  if (letters.length === 0) return "";
  return `The PDFs’ font has no ${letters.join(" ")} and no spelling for ${letters.length === 1 ? "it" : "them"}: a question mark stands there. The SVG drawing has ${letters.length === 1 ? "it" : "them"}, and so has what is printed from a browser.`;
}

/** What a kerf may be. @param most mm */
export function kerfMend(most: number): string {
  return `must be from 0 to ${most} mm, the width of the cut`;
}

export function plateTitle(name: string): string {
  return `Plate: ${name}`;
}

export function plateNotes(
  {
    thickness,
    holes,
  }: { readonly thickness: number; readonly holes: readonly { readonly diameter: number }[] },
  material: string,
  kerf: number,
  format: LengthFormat,
): string[] {
  return [
    `${sizeText(thickness, format)} thick, ${material}. ${holesWords(holes, format)}`,
    kerf === 0
      ? "The lines are the part's own edges: no kerf is allowed for."
      : `The lines are the path of the cutter's center: a kerf of ${formatLength(kerf, { ...format, fraction: "decimal", decimals: format.units === "mm" ? 2 : 3 })} is allowed for, half of it outside the part.`,
    DRAWING_CAUTIONS[0],
  ];
}

/** A size of stock, a step or a hole: to 1/64 in, or a hundredth of a millimeter. */
export function sizeText(mm: number, format: LengthFormat): string {
  return formatLength(mm, { ...format, fraction: 64, decimals: 2 });
}

/** `Holes: 2 × Ø 17/32 in, 1 × Ø 2 in.` */
export function holesWords(holes: readonly { readonly diameter: number }[], format: LengthFormat): string {
  const counts = new Map<string, number>();
  for (const { diameter } of holes) {
    const size = sizeText(diameter, format);
    counts.set(size, (counts.get(size) ?? 0) + 1);
  }
  const drilled = [...counts].map(([diameter, count]) => `${count} × Ø ${diameter}`).join(", ");
  return drilled === "" ? "No holes." : `Holes: ${drilled}.`;
}

export type PlateFault = "kerf too wide" | "hole too small" | "hole at the edge" | "holes meet";

/** What keeps a plate from being cut. */
export function plateFaultWords(fault: PlateFault): string {
  switch (fault) {
    case "kerf too wide":
      return "has a notch or step narrower than the kerf; give a smaller kerf, or a plainer outline";
    case "hole too small":
      return "must be more than the kerf; give a smaller kerf, or drill this hole and leave it out";
    case "hole at the edge":
      return "must leave material between the hole and the plate's edge; move the hole inward or make it smaller";
    case "holes meet":
      return "must leave material between this hole and another; move one of them or make it smaller";
  }
}

/** A setup that does not say what its knuckle is made of. */
export const NO_BUILD =
  "is missing, so there is nothing to draw; say what the knuckle is made of: build.pin, build.members, build.plates";

/** A build of stiff connections alone, or of nothing. */
export const NOTHING_TO_DRAW =
  "has no pin, tube, bar or plate, so there is nothing to draw; add what the knuckle is made of";

/** Under each view of the drawing sheet. */
export function viewTitle(view: "front" | "side" | "top"): string {
  return { front: "From the front", side: "From outboard", top: "From above" }[view];
}

export function sectionTitle(pinAngle: number): string {
  return `Section A–A along the pin, turned level${pinAngle === 0 ? "" : ` by ${formatAngle(pinAngle)}`}`;
}

/** Paper to knuckle. @param per mm of the knuckle for a millimeter of paper */
export function scaleWords(per: number): string {
  return `1:${per}`;
}

export function projectionWords(angle: "first" | "third"): string {
  return angle === "first" ? "First-angle projection" : "Third-angle projection";
}

/** Beside the title block of the drawing sheet. */
export const DRAWING_NOTES = [
  "Axes meet the ball joints' centers. Dimensions rule: do not measure the views. Welds and the bosses' tapers are not drawn.",
] as const;

/** Title block of the drawing sheet, the first line the largest. @param lines what stands under the title */
export function titleLines({
  title,
  lines,
  scale,
  paper,
  units,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly scale: string;
  readonly paper: string;
  readonly units: LengthFormat["units"];
}): string[] {
  return [
    title,
    ...lines,
    "Left knuckle; the right mirrors it",
    `Scale ${scale} on ${paper === "a4" || paper === "a3" ? paper.toUpperCase() : paper} paper`,
    units === "in" ? "Inches, to the nearest 1/32" : "Millimeters, to a tenth",
  ];
}

/** From the steering axis along the pin to the end of a step, or to the hub face. */
export function pinLengthWords(to: number, hubFace: number, format: LengthFormat): string {
  const length = formatLength(to, format);
  return Math.abs(to - hubFace) < 1e-3 ? `hub face ${length}` : length;
}

/** A step of the pin, and its fillet where one is given. */
export function pinStepWords(diameter: number, fillet: number | null, format: LengthFormat): string {
  return `Ø ${sizeText(diameter, format)}${fillet === null ? "" : `, R ${sizeText(fillet, format)}`}`;
}

/** Shown where a setup does not say what its knuckle is made of. */
export const NO_DRAWINGS_YET =
  "There is nothing to draw yet: first enter what the knuckle is made of, its pin, tubes, bars and plates.";

/** The ways to say it, and what the quick one is. */
export const UNBUILT_WAYS = {
  usual: "Start from a usual knuckle",
  next: "Next: draw it from a usual knuckle",
  fields: "Enter it field by field, at Measure",
  note: "A usual knuckle is the example's: pin, posts, plates, welds and studs, hung on this truck's ball joints, pin and hub face. It is sized for no load; have the part designed by a licensed engineer.",
} as const;

/** How much of what a knuckle is made of nobody has said for this truck, on what it is cut by; null = all of it is the truck's own. */
export function usualBuildCaution({ fromExample }: Pick<Setup, "fromExample">): string | null {
  const count = fromExample?.fields.filter(([block]) => block === "build").length ?? 0;
  if (count === 0) return null;
  const numbers = count === 1 ? "1 number" : `${count} numbers`;
  return `${numbers} of this knuckle's build ${count === 1 ? "is" : "are"} from the example, sized for no load.`;
}

/** The same on a screen, with what to do. */
export function usualBuildSentence(setup: Pick<Setup, "fromExample">): string | null {
  const caution = usualBuildCaution(setup);
  if (caution === null) return null;
  return `⋯ ${caution} Have the part designed by a licensed engineer before anything is cut.`;
}

/** Why forces stand alone where a setup does not say what its knuckle is made of. */
export const NO_SHARES_YET =
  "Forces only: the setup does not say what this knuckle is made of, so there are no shares of yield, no deflection and no weight yet.";

/** Beside the button that prints. */
export const PRINT_AT_SIZE =
  "Print at 100%, on the paper chosen, without fitting to the page; then measure the bar on a sheet.";

/** A paper with its size. */
export function paperWords(paper: "letter" | "a4" | "tabloid" | "a3"): string {
  return {
    letter: "Letter, 8 1/2 × 11 in",
    a4: "A4, 210 × 297 mm",
    tabloid: "Tabloid, 11 × 17 in",
    a3: "A3, 297 × 420 mm",
  }[paper];
}

/** What a file is, beside its name. */
export function fileWords(
  kind: string,
  scale: string | null,
  paper: Parameters<typeof paperWords>[0] | null,
): string {
  return [kind, scale, paper === null ? null : paperWords(paper)].filter((part) => part !== null).join("; ");
}

/** Beside what a knuckle is made by: `This knuckle rubs on this truck (see Clear): the tire rubs …`. @param report one that rubs */
export function checkOnPaperSentence(report: CheckReport, model: Model, format: LengthFormat): string {
  const told = verdictSentence(report, model, format);
  return `This knuckle rubs on this truck (see Clear): ${told.charAt(0).toLowerCase()}${told.slice(1)}`;
}
