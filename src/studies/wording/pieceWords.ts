import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { type ThreadCallout, threadText } from "../../units/threadCallout.ts";
import { DRAWING_CAUTIONS, holesWords, pinStepWords, plateTitle, sizeText } from "./drawingWords.ts";
import { jointWords } from "./loadsWords.ts";

export function templateTitle(name: string, joint: string): string {
  return `Notch template: ${name}, end at ${jointWords(joint)}`;
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

/** What is told of the pin, mm. */
export interface PinFacts {
  readonly material: string;
  /** Its thread as the order gives it, null = by its hub's name alone, and the order's number; null = there is no order. */
  readonly thread: { readonly callout: ThreadCallout | null; readonly order: string | null } | null;
  /** From its root outward, each with its length; null = the build has no pin. */
  readonly steps:
    | readonly { readonly length: number; readonly diameter: number; readonly fillet: number | null }[]
    | null;
}

/** What is told of a plate, mm. */
export interface PlateFacts {
  readonly name: string;
  readonly material: string;
  readonly thickness: number;
  /** Of the outline, in the plate's own axes. */
  readonly size: readonly [across: number, up: number];
  readonly holes: readonly { readonly diameter: number }[];
}

/** All that is cut for a knuckle. */
export interface CutListFacts {
  /** How many knuckles are made, and whether half of them are of the other side; null = there is no order. */
  readonly made: { readonly knuckles: number; readonly isPaired: boolean } | null;
  readonly pieces: readonly PieceFacts[];
  readonly pin: PinFacts;
  readonly plates: readonly PlateFacts[];
}

/** Stands where a build does not give a size. */
const SIZE_NOT_GIVEN = "size not given";

/** The pin's steps from its root outward: `Ø 1 3/4 in, R 1/4 in, 2 in long; …`. */
export function pinWords({ steps, thread }: PinFacts, format: LengthFormat): string {
  if (steps === null) return SIZE_NOT_GIVEN;
  const words = steps.map(
    ({ length, diameter, fillet }) =>
      `${pinStepWords(diameter, fillet, format)}${fillet === null ? `, fillet ${SIZE_NOT_GIVEN}` : ""}, ${formatLength(length, format)} long`,
  );
  return `from its root out ${words.join("; ")}; ${threadWords(thread)}`;
}

/** A build has no thread on its pin; the order of the knuckle may give one. */
function threadWords(thread: PinFacts["thread"]): string {
  if (thread === null) return "thread: not part of the build, and there is no order that gives it";
  const { callout, order } = thread;
  const of = order === null ? "the order" : `order ${order}`;
  return callout === null ? `thread: see the sheet of ${of}` : `thread: ${threadText(callout)}, by ${of}`;
}

/** Its holes, and what shows where they are. */
export function plateWords({ name, holes }: PlateFacts, format: LengthFormat): string {
  return `${holesWords(holes, format)} Outline and hole pattern: sheet “${plateTitle(name)}”.`;
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
    `Wrap it round the outside, print outward, both edges on the mark line scribed along the ${piece.kind}, its end at ${jointWords(other.joint)} up.`,
    piece.kind === "tube"
      ? "Solid line: cut here with the blade pointed at the tube's axis; it allows for the wall. Dashed: where the outside meets."
      : "Solid line: where the outside meets.",
    `On the mark line, from cut to cut on the outside: ${formatLength(piece.onMark, format)}.`,
  ];
  return [...notes, ...endRemarks(end, format), DRAWING_CAUTIONS[0]];
}

/** Under the cut list: what does not go into its columns. */
export function cutRemarks({ made, pieces, pin, plates }: CutListFacts, format: LengthFormat): string[] {
  return [
    quantitySentence(made),
    ...(pin.steps === null ? [] : [`pin: ${pinWords(pin, format)}.`]),
    ...plates.map((plate) => `${plate.name}: ${plateWords(plate, format)}`),
    ...pieces.flatMap((piece) =>
      piece.ends.flatMap((end) => endRemarks(end, format).map((text) => `${piece.name}: ${text}`)),
    ),
  ];
}

/** What the numbers of pieces are for. */
function quantitySentence(made: CutListFacts["made"]): string {
  if (made === null) return "Quantity: for one knuckle.";
  const { knuckles, isPaired } = made;
  if (isPaired)
    return `Quantity: for all ${knuckles} knuckles of the order; half of them right ones, whose pieces are mirror images.`;
  return `Quantity: for ${knuckles === 1 ? "the one knuckle" : `all ${knuckles} knuckles`} of the order.`;
}

/** What the fitter must know of an end besides its angle. */
export function endRemarks({ joint, fittedTo, missed, overhang }: EndFacts, format: LengthFormat): string[] {
  const what = fittedTo.join(" and ");
  return [
    ...(missed > 0 && fittedTo.length > 0
      ? [
          `At ${jointWords(joint)} it is wider than ${what}: for ${missed} of 360° it passes beside it, and needs filling or another order of fitting.`,
        ]
      : []),
    ...(overhang > 0.5
      ? [
          `At ${jointWords(joint)} the saddle reaches ${formatLength(overhang, format)} past the end of ${what}: close or trim it.`,
        ]
      : []),
  ];
}

/** Under the cut list. */
export const CUT_LIST_NOTES = [
  "Blank: tip to tip, what to saw off before notching; of the pin its steps' whole length, of a plate its outline's size. On the mark line: from cut to cut on the outside, along the line both templates start at.",
  "Angle: between the axes, or axis and face. Turn: from the long side of the first end to that of the second, + counterclockwise seen from the second end.",
] as const;

/** The cut list as a table. */
export function cutRows(
  { made, pieces, pin, plates }: CutListFacts,
  format: LengthFormat,
): { readonly header: readonly string[]; readonly rows: readonly (readonly string[])[] } {
  const length = (mm: number) => formatLength(mm, format);
  const quantity = String(quantityOf(made));
  const uncut = (name: string, stock: string, material: string, blank: string) => [
    ...[name, quantity, stock, material, "–", blank],
    ...["–", "–", "–", "–"],
  ];
  const { steps } = pin;
  return {
    header: [
      "Piece",
      "Quantity",
      "Stock",
      "Material",
      "Centers",
      "Blank",
      "On the mark line",
      "First end",
      "Second end",
      "Turn",
    ],
    rows: [
      steps === null
        ? uncut("pin", SIZE_NOT_GIVEN, pin.material, SIZE_NOT_GIVEN)
        : uncut(
            "pin",
            `Ø ${sizeText(Math.max(...steps.map(({ diameter }) => diameter)), format)} at its thickest`,
            pin.material,
            length(pinLength(steps)),
          ),
      ...plates.map(({ name, thickness, material, size }) =>
        uncut(name, `plate ${sizeText(thickness, format)}`, material, size.map(length).join(" × ")),
      ),
      ...pieces.map((piece) => [
        piece.name,
        quantity,
        stockWords(piece, format),
        piece.material,
        length(piece.centers),
        length(piece.blank),
        length(piece.onMark),
        ...piece.ends.map((end) => `${jointWords(end.joint)}: ${endWords(end)}`),
        piece.turn === null ? "–" : formatAngle(piece.turn),
      ]),
    ],
  };
}

/** How many of each piece are cut: a knuckle has one of each. */
export function quantityOf(made: CutListFacts["made"]): number {
  return made?.knuckles ?? 1;
}

/** Root to end, mm. */
export function pinLength(steps: readonly { readonly length: number }[]): number {
  return steps.reduce((sum, { length }) => sum + length, 0);
}
