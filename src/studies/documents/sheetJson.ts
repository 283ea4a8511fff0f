import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { CutPiece } from "../drawings/cutPieces.ts";
import type { DrawingAsk, ShopDrawings } from "../drawings/shopDrawings.ts";
import type { ShopFile } from "../drawings/shopFile.ts";
import { quantityOf } from "../wording/pieceWords.ts";

/** A file as it was written. */
export interface WrittenSheet extends ShopFile {
  readonly bytes: Uint8Array;
}

/** What `sheet --json` prints: files with their kind, scale and paper, and the cut list; lengths in the file's units. */
export function sheetJson(
  { cutList, unwritten }: ShopDrawings,
  written: readonly WrittenSheet[],
  { paper, angle, kerf }: DrawingAsk,
  units: LengthUnit,
) {
  return {
    units,
    paper,
    angle,
    kerf: unitsFromMm(kerf, units),
    files: writtenJson(written),
    quantity: quantityOf(cutList.made),
    pieces: cutList.pieces.map((piece) => pieceJson(piece, units)),
    pin: {
      material: cutList.pin.material,
      steps:
        cutList.pin.steps?.map(({ length, diameter, fillet }) => ({
          length: unitsFromMm(length, units),
          diameter: unitsFromMm(diameter, units),
          fillet: fillet === null ? null : unitsFromMm(fillet, units),
        })) ?? null,
    },
    plates: cutList.plates.map(({ name, material, thickness, size, holes }) => ({
      name,
      material,
      thickness: unitsFromMm(thickness, units),
      size: size.map((mm) => unitsFromMm(mm, units)),
      holes: holes.map(({ diameter }) => unitsFromMm(diameter, units)),
    })),
    ...(unwritten.length > 0 ? { unwritten } : {}),
  };
}

/** Drawings that were written. */
export function writtenJson(written: readonly WrittenSheet[]) {
  return written.map((one) => ({
    file: one.file,
    kind: one.kind,
    title: one.title,
    format: one.contents.format,
    scale: one.scale,
    paper: one.paper,
    ...(one.contents.format === "pdf" ? { pages: one.contents.pages.length } : {}),
    bytes: one.bytes.length,
  }));
}

function pieceJson(piece: CutPiece, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  return {
    name: piece.name,
    kind: piece.kind,
    material: piece.material,
    diameter: length(piece.diameter),
    wall: piece.wall === null ? null : length(piece.wall),
    centers: length(piece.centers),
    blank: length(piece.blank),
    onMark: length(piece.onMark),
    ends: piece.ends.map((end) => ({
      joint: end.joint,
      fittedTo: end.fittedTo,
      angle: degFromRad(end.angle),
      missed: end.missed,
      overhang: length(end.overhang),
    })),
    turn: piece.turn === null ? null : degFromRad(piece.turn),
  };
}
