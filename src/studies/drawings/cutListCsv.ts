import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { CutPiece } from "./cutPieces.ts";

/**
 * The cut list for a spreadsheet: a first line of what it is, then comma-separated values (RFC 4180, but lines end with a line
 * feed alone), full precision; the header names every unit. Text that a spreadsheet would take for a formula begins with '.
 */
export function cutListCsv(pieces: readonly CutPiece[], units: LengthUnit): string {
  const length = (mm: number) => String(unitsFromMm(mm, units) + 0);
  const angle = (rad: number) => String(degFromRad(rad) + 0);
  const ends = ["first", "second"].flatMap((which) => [
    `${which} end`,
    `${which} end fitted to`,
    `${which} angle (deg)`,
  ]);
  const header = [
    "piece",
    "kind",
    "material",
    `diameter (${units})`,
    `wall (${units})`,
    `centers (${units})`,
    `blank (${units})`,
    `on the mark line (${units})`,
    ...ends,
    "turn (deg)",
  ];
  const rows = pieces.map((piece) => [
    piece.name,
    piece.kind,
    piece.material,
    length(piece.diameter),
    piece.wall === null ? "" : length(piece.wall),
    length(piece.centers),
    length(piece.blank),
    length(piece.onMark),
    ...piece.ends.flatMap(({ joint, fittedTo, angle: between }) => [
      joint,
      fittedTo.join("; "),
      angle(between),
    ]),
    piece.turn === null ? "" : angle(piece.turn),
  ]);
  const lines = [header, ...rows].map((row) => row.map(cell).join(","));
  return `# Wellsweep cut list, ${units}\n${lines.join("\n")}\n`;
}

function cell(text: string): string {
  const plain = /^[=+@\t\r]|^-(?![\d.])/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
