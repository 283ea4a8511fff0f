import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { cutFormat } from "../wording/drawingWords.ts";
import { bareJointWords } from "../wording/loadsWords.ts";
import { pinLength, pinWords, plateWords, quantityOf } from "../wording/pieceWords.ts";
import type { CutList } from "./cutPieces.ts";

/**
 * The cut list for a spreadsheet: a first line of what it is, then comma-separated values (RFC 4180, but lines end with a line
 * feed alone), full precision; the header names every unit. Text that a spreadsheet would take for a formula begins with '.
 */
export function cutListCsv({ made, pieces, pin, plates }: CutList, units: LengthUnit): string {
  const length = (mm: number) => String(unitsFromMm(mm, units) + 0);
  const angle = (rad: number) => String(degFromRad(rad) + 0);
  const ends = ["first", "second"].flatMap((which) => [
    `${which} end`,
    `${which} end fitted to`,
    `${which} angle (deg)`,
  ]);
  const quantity = String(quantityOf(made));
  const header = [
    "piece",
    "quantity",
    "kind",
    "material",
    `diameter (${units})`,
    `wall (${units})`,
    `centers (${units})`,
    `blank (${units})`,
    `on the mark line (${units})`,
    ...ends,
    "turn (deg)",
    `thickness (${units})`,
    `width (${units})`,
    `height (${units})`,
    "steps or holes",
  ];
  const format = cutFormat(units);
  const none = (count: number) => new Array<string>(count).fill("");
  const { steps } = pin;
  const thickest = steps === null ? "" : length(Math.max(...steps.map(({ diameter }) => diameter)));
  const whole = steps === null ? "" : length(pinLength(steps));
  const others = [
    ["pin", quantity, "pin", pin.material, thickest, ...none(2), whole, ...none(11), pinWords(pin, format)],
    ...plates.map((plate) => [
      ...[plate.name, quantity, "plate", plate.material, ...none(12)],
      ...[plate.thickness, ...plate.size].map(length),
      plateWords(plate, format),
    ]),
  ];
  const rows = pieces.map((piece) => [
    piece.name,
    quantity,
    piece.kind,
    piece.material,
    length(piece.diameter),
    piece.wall === null ? "" : length(piece.wall),
    length(piece.centers),
    length(piece.blank),
    length(piece.onMark),
    ...piece.ends.flatMap(({ joint, fittedTo, angle: between }) => [
      bareJointWords(joint),
      fittedTo.join("; "),
      angle(between),
    ]),
    piece.turn === null ? "" : angle(piece.turn),
    ...none(4),
  ]);
  const lines = [header, ...others, ...rows].map((row) => row.map(cell).join(","));
  return `# Wellsweep cut list, ${units}\n${lines.join("\n")}\n`;
}

function cell(text: string): string {
  const plain = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
