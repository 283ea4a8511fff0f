import { type DrawnFigure, drawnBounds, type SectionDrawing } from "../geometry/sectionDrawing.ts";
import {
  dxfFile,
  entityGroups,
  type Group,
  headerGroups,
  lineGroups,
  tableGroups,
  textGroups,
} from "./dxfParts.ts";

/**
 * Line types: what a thing sweeps is drawn long-dashed double-dotted, as extreme positions of moving parts are
 * (ISO 128-2, from memory), what is cut continuous, the moving thing at one pose dashed. Lengths in mm, − = gap, 0 = dot.
 */
const LINE_TYPES = {
  envelope: { name: "PHANTOM", about: "Swept ____ _ _ ____ _ _", dashes: [12, -2, 2, -2, 2, -2] },
  part: { name: "CONTINUOUS", about: "Cut ________________", dashes: [] },
  ring: { name: "DASHED", about: "At one pose __ __ __ __", dashes: [6, -3] },
} as const;

/** Numbers of the format's basic colors. */
const COLORS = { envelope: 1, part: 7, ring: 5, notes: 7 } as const;

const NOTES = "NOTES";
/** mm. Height of the notes' letters. */
const LETTERS = 5;
/** R12 names have at most 31 characters. */
const LONGEST_NAME = 31;

/**
 * A section as DXF text, ASCII, release 12 (group codes as in Autodesk's open DXF Reference, from memory), 1:1 in the
 * drawing's own units, said by $INSUNITS. Each figure has its own layer, named for what it is and for itself; closed
 * outlines are closed POLYLINE entities, a single straight piece is a LINE. Notes lie below, on a layer of their own.
 */
export function dxfText(drawing: SectionDrawing): string {
  const layers = layerNames(drawing.figures);
  const { figures, units } = drawing;
  const lines = figures.flatMap(({ outlines }, i) =>
    outlines.flatMap((line) => lineGroups(line, layers[i]!, units)),
  );
  return dxfFile(
    headerGroups("Wellsweep section, 1:1", drawnBounds(figures) ?? [0, 0, 0, 0], units),
    tableGroups(
      Object.values(LINE_TYPES),
      [
        ...figures.map(({ kind }, i) => ({
          name: layers[i]!,
          color: COLORS[kind],
          lineType: LINE_TYPES[kind].name,
        })),
        { name: NOTES, color: COLORS.notes, lineType: LINE_TYPES.part.name },
      ],
      units,
    ),
    entityGroups([...lines, ...noteGroups(drawing)]),
  );
}

/** `PART_FENDER_LIP`; told apart by a number where two would be the same. */
function layerNames(figures: readonly DrawnFigure[]): string[] {
  const taken = new Set([NOTES]);
  return figures.map(({ kind, name }) => {
    const own = name
      .toUpperCase()
      .replace(/[^A-Z0-9]+/g, "_")
      .replace(/^_|_$/g, "");
    const prefix = kind.toUpperCase();
    const full =
      own === prefix || own.startsWith(`${prefix}_`) || own === "" ? own || prefix : `${prefix}_${own}`;
    for (let i = 1; ; i++) {
      const tail = i === 1 ? "" : `_${i}`;
      const layer = `${full.slice(0, LONGEST_NAME - tail.length)}${tail}`;
      if (taken.has(layer)) continue;
      taken.add(layer);
      return layer;
    }
  });
}

/** Title and cautions below the drawing, from its left edge down. */
function noteGroups(drawing: SectionDrawing): Group[] {
  const [u, v] = drawnBounds(drawing.figures) ?? [0, 0];
  return [...drawing.title, ...drawing.cautions].flatMap((line, i) =>
    textGroups(line, { at: [u, v - (i + 3) * 2 * LETTERS], height: LETTERS }, NOTES, drawing.units),
  );
}
