import {
  type DrawnFigure,
  type DrawnLine,
  drawnBounds,
  type SectionDrawing,
} from "../geometry/sectionDrawing.ts";
import { MM_PER_INCH } from "../units/lengthUnits.ts";

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Text between tags or in double quotes: marked up, and characters that XML 1.0 cannot hold turned into spaces. */
export function xmlText(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, " ")
    .replace(/[&<>"]/g, (mark) => ENTITIES[mark]!);
}

// All lengths on the sheet are mm.
const MARGIN = 12;
const TITLE = 6;
const TEXT = 4;
const LABEL = 3;
/** From one line of text to the next, in letter heights. */
const LEADING = 1.6;
/** Width of a letter at most, in letter heights: what the sheet leaves room for. */
const LETTER_WIDTH = 0.62;
const SAMPLE = 32;
/** From the left edge to the words of the legend. */
const LEGEND = SAMPLE + 4;
const DECIMALS = 4;

/**
 * What each kind of line looks like; told apart by dashes and weight, so that a black print reads too. Dashes as in
 * `writeDxf.ts`: long-dashed double-dotted for the swept space.
 */
const STYLES = {
  envelope: {
    stroke: "#b3261e",
    width: 0.5,
    dashes: "12 2 2 2 2 2",
    fill: "#b3261e",
    says: "space swept by tire and rim",
  },
  part: { stroke: "#1a1a1a", width: 0.7, dashes: "", fill: "#8a8a8a", says: "body, cut" },
  ring: { stroke: "#1f4e9e", width: 0.35, dashes: "6 3", fill: "none", says: "tire and rim at one pose" },
} as const;

/**
 * A section as SVG, 1:1: width and height in mm and a viewBox of as many units, so that one unit is one millimeter. x is the
 * drawing's u, y its v turned down (y = −v). A bar tells whether a print has kept its scale. Title above; legend,
 * bar and cautions below.
 */
export function svgText(drawing: SectionDrawing): string {
  const [u0, v0, u1, v1] = drawnBounds(drawing.figures) ?? [0, 0, 0, 0];
  const head = drawing.title.map((text, i) => ({ text, size: i === 0 ? TITLE : TEXT }));
  const kinds = (["envelope", "part", "ring"] as const).filter((kind) =>
    drawing.figures.some((figure) => figure.kind === kind),
  );
  const bar = barOf(drawing.units);
  const headHeight = head.reduce((sum, { size }) => sum + size * LEADING, 0) + MARGIN / 2;
  const lineCount = kinds.length + 2 + drawing.cautions.length;
  const footHeight = MARGIN / 2 + lineCount * TEXT * LEADING;
  const labels = drawing.figures.flatMap(labelOf);
  const texts = [
    ...head.map(({ text, size }) => ({ x: u0, text, size })),
    ...labels,
    ...kinds.map((kind) => ({ x: u0 + LEGEND, text: STYLES[kind].says, size: TEXT })),
    ...[bar.text, ...drawing.cautions].map((text) => ({ x: u0, text, size: TEXT })),
  ];
  const right = Math.max(
    u1,
    u0 + bar.length,
    ...texts.map(({ x, text, size }) => x + text.length * size * LETTER_WIDTH),
  );
  const left = u0 - MARGIN;
  const top = -v1 - MARGIN - headHeight;
  const width = round(right - u0 + 2 * MARGIN);
  const height = round(v1 - v0 + headHeight + footHeight + 2 * MARGIN);

  const lines: string[] = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${round(left)} ${round(top)} ${width} ${height}" font-family="sans-serif" fill="#1a1a1a">`,
    "<!-- Wellsweep section, 1:1 -->",
    `<title>${xmlText(drawing.title[0] ?? "Section")}</title>`,
    `<rect x="${round(left)}" y="${round(top)}" width="${width}" height="${height}" fill="#ffffff"/>`,
  ];
  let y = top + MARGIN;
  for (const { text, size } of head) {
    lines.push(textLine(u0, y + size, size, text));
    y += size * LEADING;
  }
  lines.push(...drawing.figures.flatMap(figureLines));
  for (const { x, y: at, size, text } of labels) lines.push(textLine(x, at, size, text));
  y = -v0 + MARGIN;
  for (const kind of kinds) {
    lines.push(
      `<path class="sample" d="M${round(u0)} ${round(y + TEXT / 2)}h${SAMPLE}" ${strokeOf(kind)} fill="none"/>`,
      textLine(u0 + LEGEND, y + TEXT * 0.85, TEXT, STYLES[kind].says),
    );
    y += TEXT * LEADING;
  }
  lines.push(...barLines(u0, y + TEXT, bar));
  y += 2 * TEXT * LEADING;
  for (const text of drawing.cautions) {
    lines.push(textLine(u0, y + TEXT, TEXT, text));
    y += TEXT * LEADING;
  }
  return `${lines.join("\n")}\n</svg>\n`;
}

/** A figure's closed outlines are one filled shape, holes left out. */
function figureLines({ kind, name, outlines }: DrawnFigure): string[] {
  const lines = [`<g class="${kind}" ${strokeOf(kind)}>`, `<title>${xmlText(name)}</title>`];
  const closed = outlines.filter((outline) => outline.closed);
  if (closed.length > 0) {
    const { fill } = STYLES[kind];
    lines.push(
      `<path d="${closed.map(pathOf).join("")}" fill="${fill}" fill-opacity="0.12" fill-rule="evenodd"/>`,
    );
  }
  for (const open of outlines) if (!open.closed) lines.push(`<path d="${pathOf(open)}" fill="none"/>`);
  lines.push("</g>");
  return lines;
}

/** A part's name, at the upper right of what is drawn of it. */
function labelOf(figure: DrawnFigure): { x: number; y: number; size: number; text: string }[] {
  if (figure.kind !== "part") return [];
  const bounds = drawnBounds([figure]);
  return bounds === null ? [] : [{ x: bounds[2] + 1.5, y: -bounds[3], size: LABEL, text: figure.name }];
}

function strokeOf(kind: DrawnFigure["kind"]): string {
  const { stroke, width, dashes } = STYLES[kind];
  return `stroke="${stroke}" stroke-width="${width}"${dashes === "" ? "" : ` stroke-dasharray="${dashes}"`}`;
}

function pathOf({ points, closed }: DrawnLine): string {
  let d = "";
  for (let i = 0; i < points.length; i += 2) {
    d += `${i === 0 ? "M" : "L"}${round(points[i]!)} ${round(-points[i + 1]!)}`;
  }
  return closed ? `${d}Z` : d;
}

interface Bar {
  /** mm. */
  readonly length: number;
  readonly text: string;
}

function barOf(units: SectionDrawing["units"]): Bar {
  return units === "in"
    ? { length: 4 * MM_PER_INCH, text: "4 in: measure this bar to see whether the print is 1:1" }
    : { length: 100, text: "100 mm: measure this bar to see whether the print is 1:1" };
}

function barLines(u: number, y: number, bar: Bar): string[] {
  const [x, end] = [round(u), round(u + bar.length)];
  return [
    `<path class="scale-bar" d="M${x} ${round(y)}H${end}M${x} ${round(y - 2)}V${round(y + 2)}M${end} ${round(y - 2)}V${round(y + 2)}" stroke="#1a1a1a" stroke-width="0.4" fill="none"/>`,
    textLine(u, y + TEXT * LEADING, TEXT, bar.text),
  ];
}

function textLine(x: number, y: number, size: number, text: string): string {
  return `<text x="${round(x)}" y="${round(y)}" font-size="${size}">${xmlText(text)}</text>`;
}

/** Without the sign of a zero. */
function round(mm: number): number {
  return Number(mm.toFixed(DECIMALS)) + 0;
}
