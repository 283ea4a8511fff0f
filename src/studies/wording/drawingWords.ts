import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";

/** Printed on every drawing that something is cut by. */
export const DRAWING_CAUTIONS = [
  "Steering part: cutting and welding it is for licensed, qualified people. Have it reviewed by a licensed engineer; follow local codes.",
  "Dimensions are worked out from the numbers in the setup; they say nothing of strength. Measure the print's bar before cutting.",
] as const;

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

export function templateTitle(name: string, joint: string): string {
  return `Notch template: ${name}, end at “${joint}”`;
}

/** At the mark line and each quarter turn from it. */
export function quarterWords(quarter: number): string {
  return quarter === 0 ? "mark line: 0°" : `${90 * quarter}°`;
}

/** What is told of an end that is cut. */
export interface EndFacts {
  readonly joint: string;
  /** Names of what it is fitted to; empty = cut square. */
  readonly fittedTo: readonly string[];
  /** Between the axes where it is notched, or axis and face; a right angle where it is cut square. rad. */
  readonly angle: number;
  /** Lines along the member that pass beside all it is fitted to: it is wider than they are. */
  readonly missed: number;
  /** How far the saddle reaches past the end of what it is fitted to, mm; 0 = it lies on it all round. */
  readonly overhang: number;
}

/** What is told of a piece of the cut list. mm. */
export interface PieceFacts {
  readonly name: string;
  readonly kind: "tube" | "bar";
  readonly material: string;
  readonly diameter: number;
  /** null = solid. */
  readonly wall: number | null;
  /** Joint to joint. */
  readonly centers: number;
  /** Blank to saw before anything is notched: tip to tip, outside and through the wall. */
  readonly blank: number;
  /** Along the mark line, from cut to cut on the outside. */
  readonly onMark: number;
  readonly ends: readonly [EndFacts, EndFacts];
  /**
   * From the first end's long side to the second's about the member, counterclockwise seen from the second end toward the
   * first, −180 to 180 degrees; where one end is notched at a right angle it has two long sides: 0 to 180. rad; null = an end is
   * square.
   */
  readonly turn: number | null;
}

/** `tube 1 3/4 in × 0.188 in wall`. */
function stockWords({ kind, diameter, wall }: PieceFacts, { units }: LengthFormat): string {
  const round = formatLength(diameter, { units, fraction: 64, decimals: 2 });
  const thick =
    wall === null ? "" : ` × ${formatLength(wall, { units, fraction: "decimal", decimals: 3 })} wall`;
  return `${kind} ${round}${thick}`;
}

/** `notched to pin, 81.6°`; `square`. */
function endWords({ fittedTo, angle }: EndFacts): string {
  return fittedTo.length === 0 ? "square" : `to ${fittedTo.join(" and ")}, ${formatAngle(angle)}`;
}

export function templateNotes(piece: PieceFacts, which: 0 | 1, format: LengthFormat): string[] {
  const end = piece.ends[which];
  const other = piece.ends[1 - which]!;
  const notes = [
    `${stockWords(piece, format)}, ${piece.material}. Fitted ${endWords(end)}.`,
    `Wrap it round the outside, print outward, both edges on the mark line scribed along the ${piece.kind}, its end at “${other.joint}” up.`,
    piece.kind === "tube"
      ? "Solid line: cut here with the blade pointed at the tube's axis; it counts the wall. Dashed: where the outside meets."
      : "Solid line: where the outside meets.",
    `On the mark line, from cut to cut on the outside: ${formatLength(piece.onMark, format)}.`,
  ];
  return [...notes, ...endRemarks(end, format), DRAWING_CAUTIONS[0]];
}

/** What the fitter must know of an end besides its angle. */
export function endRemarks({ joint, fittedTo, missed, overhang }: EndFacts, format: LengthFormat): string[] {
  const what = fittedTo.join(" and ");
  return [
    ...(missed > 0 && fittedTo.length > 0
      ? [
          `At “${joint}” it is wider than ${what}: for ${missed} of 360° it passes beside and needs filling or another order.`,
        ]
      : []),
    ...(overhang > 0.5
      ? [
          `At “${joint}” the saddle reaches ${formatLength(overhang, format)} past the end of ${what}: close or trim it.`,
        ]
      : []),
  ];
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
  const size = (mm: number) => formatLength(mm, { ...format, fraction: 64, decimals: 2 });
  const counts = new Map<string, number>();
  for (const { diameter } of holes) counts.set(size(diameter), (counts.get(size(diameter)) ?? 0) + 1);
  const drilled = [...counts].map(([diameter, count]) => `${count} × Ø ${diameter}`).join(", ");
  return [
    `${size(thickness)} thick, ${material}. ${drilled === "" ? "No holes." : `Holes: ${drilled}.`}`,
    kerf === 0
      ? "The lines are the part's own edges: no kerf is counted."
      : `The lines are the way of the cutter's middle: a kerf of ${formatLength(kerf, { ...format, fraction: "decimal", decimals: format.units === "mm" ? 2 : 3 })} is counted, half of it outside the part.`,
    DRAWING_CAUTIONS[0],
  ];
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

/** Under the cut list. */
export const CUT_LIST_NOTES = [
  "Blank: tip to tip, what to saw off before notching. On the mark line: from cut to cut on the outside, along the line both templates start at.",
  "Angle: between the axes, or axis and face. Turn: from the long side of the first end to that of the second, + counterclockwise seen from the second end.",
] as const;

export function cutListTitle(heading: string, page: number, pages: number): string {
  return `Cut list: ${heading}${pages > 1 ? `, sheet ${page} of ${pages}` : ""}`;
}

/** The cut list as a table. */
export function cutRows(
  pieces: readonly PieceFacts[],
  format: LengthFormat,
): { readonly header: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const length = (mm: number) => formatLength(mm, format);
  return {
    header: [
      "Piece",
      "Stock",
      "Material",
      "Centers",
      "Blank",
      "On the mark line",
      "First end",
      "Second end",
      "Turn",
    ],
    rows: pieces.map((piece) => [
      piece.name,
      stockWords(piece, format),
      piece.material,
      length(piece.centers),
      length(piece.blank),
      length(piece.onMark),
      ...piece.ends.map((end) => `${end.joint}: ${endWords(end)}`),
      piece.turn === null ? "–" : formatAngle(piece.turn),
    ]),
  };
}

/** What the drawings of a setup are called. */
export function drawingTitles(heading: string) {
  return {
    drawing: `Knuckle of ${heading}`,
    cutList: `Cut list: ${heading}`,
    templates: `Notch templates: ${heading}`,
    plates: `Plates: ${heading}`,
    solid: `Left knuckle of ${heading}`,
  };
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

/** Title block of the drawing sheet, the first line the largest. */
export function titleLines({
  heading,
  scale,
  paper,
  units,
}: {
  readonly heading: string;
  readonly scale: string;
  readonly paper: string;
  readonly units: LengthFormat["units"];
}): string[] {
  return [
    heading,
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
  const size = (mm: number) => formatLength(mm, { ...format, fraction: 64, decimals: 2 });
  return `Ø ${size(diameter)}${fillet === null ? "" : `, R ${size(fillet)}`}`;
}

/** Shown where a setup does not say what its knuckle is made of. */
export const NO_DRAWINGS_YET =
  "There is nothing to draw yet: say first what the knuckle is made of, its pin, tubes, bars and plates.";

/** Beside the button that prints. */
export const PRINT_AT_SIZE =
  "Print at 100 %, on the paper chosen, without fitting to the page; then measure the bar on a sheet.";

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
