import type { DrawnLine } from "../geometry/sectionDrawing.ts";
import { unitsFromMm } from "../units/lengthUnits.ts";

/** A group: its code and its value. */
export type Group = readonly [code: number, value: string | number];

type Units = "in" | "mm";

/** $INSUNITS. */
const INSERT_UNITS = { in: 1, mm: 4 } as const;

const DECIMALS = 6;

/** A kind of line: dashes in mm, − = gap, 0 = dot; none = continuous. */
export interface LineType {
  readonly name: string;
  readonly about: string;
  readonly dashes: readonly number[];
}

export interface Layer {
  readonly name: string;
  readonly color: number;
  readonly lineType: string;
}

/** The pieces of a DXF file, ASCII, release 12 (group codes as in Autodesk's open DXF Reference, from memory). */
export function dxfFile(...sections: readonly (readonly Group[])[]): string {
  const groups: readonly Group[] = [...sections.flat(), [0, "EOF"]];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join("");
}

/** @param bounds u, v of the low and high corner of what is drawn, mm */
export function headerGroups(about: string, bounds: readonly number[], units: Units): Group[] {
  const [u0, v0, u1, v1] = bounds.map((mm) => coordinate(mm, units)) as [string, string, string, string];
  return [
    [999, about],
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$INSUNITS"],
    [70, INSERT_UNITS[units]],
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

export function tableGroups(types: readonly LineType[], layers: readonly Layer[], units: Units): Group[] {
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
    [70, layers.length],
    ...layers.flatMap(({ name, color, lineType }): Group[] => [
      [0, "LAYER"],
      [2, name],
      [70, 0],
      [62, color],
      [6, lineType],
    ]),
    [0, "ENDTAB"],
    [0, "ENDSEC"],
  ];
}

export function entityGroups(entities: readonly Group[]): Group[] {
  return [[0, "SECTION"], [2, "ENTITIES"], ...entities, [0, "ENDSEC"]];
}

/** A closed outline is a closed POLYLINE, a single straight piece a LINE. */
export function lineGroups({ points, closed }: DrawnLine, layer: string, units: Units): Group[] {
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

/** One line of text. @param at its lower left corner; `height` of its capitals, mm */
export function textGroups(
  text: string,
  { at, height }: { readonly at: readonly [number, number]; readonly height: number },
  layer: string,
  units: Units,
): Group[] {
  return [
    [0, "TEXT"],
    [8, layer],
    [10, coordinate(at[0], units)],
    [20, coordinate(at[1], units)],
    [30, "0.0"],
    [40, coordinate(height, units)],
    [1, asciiText(text)],
  ];
}

/** A length in the drawing's units, without the sign of a zero. */
export function coordinate(mm: number, units: Units): string {
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
