import { unitsFromMm } from "../units/lengthUnits.ts";
import { type DrawnFigure, type DrawnLine, drawnBounds, type SectionDrawing } from "./sectionDrawing.ts";

/** A group: its code and its value. */
type Group = readonly [code: number, value: string | number];

/** $INSUNITS. */
const INSERT_UNITS = { in: 1, mm: 4 } as const;

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
const DECIMALS = 6;

/**
 * A section as DXF text, ASCII, release 12 (group codes as in Autodesk's open DXF Reference, from memory), 1:1 in the
 * drawing's own units, said by $INSUNITS. Each figure has its own layer, named for what it is and for itself; closed
 * outlines are closed POLYLINE entities, a single straight piece is a LINE. Notes lie below, on a layer of their own.
 */
export function dxfText(drawing: SectionDrawing): string {
  const layers = layerNames(drawing.figures);
  const groups: Group[] = [
    ...headerGroups(drawing),
    ...tableGroups(drawing, layers),
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...drawing.figures.flatMap(({ outlines }, i) =>
      outlines.flatMap((line) => lineGroups(line, layers[i]!, drawing.units)),
    ),
    ...noteGroups(drawing),
    [0, "ENDSEC"],
    [0, "EOF"],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join("");
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

function headerGroups(drawing: SectionDrawing): Group[] {
  const bounds = drawnBounds(drawing.figures) ?? [0, 0, 0, 0];
  const [u0, v0, u1, v1] = bounds.map((mm) => coordinate(mm, drawing.units)) as [
    string,
    string,
    string,
    string,
  ];
  return [
    [999, "Wellsweep section, 1:1"],
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$INSUNITS"],
    [70, INSERT_UNITS[drawing.units]],
    [9, "$EXTMIN"],
    [10, u0],
    [20, v0],
    [30, "0.0"],
    [9, "$EXTMAX"],
    [10, u1],
    [20, v1],
    [30, "0.0"],
    [0, "ENDSEC"],
  ];
}

function tableGroups({ figures, units }: SectionDrawing, layers: readonly string[]): Group[] {
  const types = Object.values(LINE_TYPES);
  return [
    [0, "SECTION"],
    [2, "TABLES"],
    [0, "TABLE"],
    [2, "LTYPE"],
    [70, types.length],
    ...types.flatMap(({ name, about, dashes }): Group[] => [
      [0, "LTYPE"],
      [2, name],
      [70, 0],
      [3, about],
      [72, 65],
      [73, dashes.length],
      [
        40,
        coordinate(
          dashes.reduce((sum: number, dash) => sum + Math.abs(dash), 0),
          units,
        ),
      ],
      ...dashes.map((dash): Group => [49, coordinate(dash, units)]),
    ]),
    [0, "ENDTAB"],
    [0, "TABLE"],
    [2, "LAYER"],
    [70, layers.length + 1],
    ...figures.flatMap(({ kind }, i) => layerGroups(layers[i]!, COLORS[kind], LINE_TYPES[kind].name)),
    ...layerGroups(NOTES, COLORS.notes, LINE_TYPES.part.name),
    [0, "ENDTAB"],
    [0, "ENDSEC"],
  ];
}

function layerGroups(name: string, color: number, lineType: string): Group[] {
  return [
    [0, "LAYER"],
    [2, name],
    [70, 0],
    [62, color],
    [6, lineType],
  ];
}

function lineGroups({ points, closed }: DrawnLine, layer: string, units: SectionDrawing["units"]): Group[] {
  const at = (i: number, shift = 0): Group[] => [
    [10 + shift, coordinate(points[i]!, units)],
    [20 + shift, coordinate(points[i + 1]!, units)],
    [30 + shift, "0.0"],
  ];
  if (points.length === 4) return [[0, "LINE"], [8, layer], ...at(0), ...at(2, 1)];
  const groups: Group[] = [
    [0, "POLYLINE"],
    [8, layer],
    [66, 1],
    [10, "0.0"],
    [20, "0.0"],
    [30, "0.0"],
  ];
  groups.push([70, closed ? 1 : 0]);
  for (let i = 0; i < points.length; i += 2) groups.push([0, "VERTEX"], [8, layer], ...at(i));
  groups.push([0, "SEQEND"], [8, layer]);
  return groups;
}

/** Title and cautions below the drawing, from its left edge down. */
function noteGroups(drawing: SectionDrawing): Group[] {
  const [u, v] = drawnBounds(drawing.figures) ?? [0, 0];
  return [...drawing.title, ...drawing.cautions].flatMap((line, i): Group[] => [
    [0, "TEXT"],
    [8, NOTES],
    [10, coordinate(u, drawing.units)],
    [20, coordinate(v - (i + 3) * 2 * LETTERS, drawing.units)],
    [30, "0.0"],
    [40, coordinate(LETTERS, drawing.units)],
    [1, asciiText(line)],
  ]);
}

function coordinate(mm: number, units: SectionDrawing["units"]): string {
  const text = unitsFromMm(mm, units).toFixed(DECIMALS);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** One line; what is not ASCII as `\U+XXXX`, each UTF-16 unit for itself. */
function asciiText(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(
      /[^\x20-\x7e]/g,
      (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}`,
    );
}
