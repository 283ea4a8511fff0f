import {
  type Page,
  type PageCircle,
  type PageLine,
  type PageText,
  type Pen,
  textWidth,
} from "../geometry/page.ts";
import { isSpelledOtherwise, winAnsiText } from "../geometry/winAnsi.ts";
import { MM_PER_INCH } from "../units/lengthUnits.ts";
import { PEN_STYLES } from "./penStyles.ts";

/** Points of a PDF in a millimeter. */
const POINTS = 72 / MM_PER_INCH;
const DECIMALS = 3;
/** Length of the handles of a quarter circle drawn as a Bézier curve, in radii: it stays within 0.03 % of the circle. */
const HANDLE = 0.5522847498;

/**
 * Pages as a PDF, each of its own size, 1:1 on paper; viewers are asked not to scale it (ISO 32000-1: 7.5 "File structure",
 * 8 "Graphics", 9.6.2.2 "Standard Type 1 fonts", 12.2 "Viewer preferences"; from memory). Lines and letters only, in the standard
 * Helvetica, uncompressed. Letters outside its Latin set are written as the nearest it has, "?" where there is none; the title
 * that a viewer shows keeps its own.
 * @throws RangeError for no page at all
 */
export function pdfBytes(pages: readonly Page[], title: string): Uint8Array {
  if (pages.length === 0) throw new RangeError("pdfBytes: needs a page");
  const kids = pages.map((_, i) => `${FIRST_PAGE + 2 * i} 0 R`).join(" ");
  const objects = [
    "<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>",
    `<< /Type /Pages /Count ${pages.length} /Kids [${kids}] >>`,
    fontObject("Helvetica"),
    fontObject("Helvetica-Bold"),
    `<< /Title ${titleString(title)} /Producer (Wellsweep) >>`,
    ...pages.flatMap((page, i) => [
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${points(page.width)} ${points(page.height)}] /Resources << /Font << /F1 3 0 R /F2 4 0 R >> >> /Contents ${FIRST_PAGE + 2 * i + 1} 0 R >>`,
      streamObject(contentOf(page)),
    ]),
  ];
  return latinBytes(fileText(objects));
}

/** A string a viewer shows: in the letters of Latin, or all of Unicode as UTF-16 (ISO 32000-1, 7.9.2.2, from memory). */
function titleString(text: string): string {
  if (!isSpelledOtherwise(text)) return `(${escaped(winAnsiText(text))})`;
  const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i));
  return `<FEFF${units.map((unit) => unit.toString(16).padStart(4, "0").toUpperCase()).join("")}>`;
}

/** Number of the first page's object. */
const FIRST_PAGE = 6;

function fontObject(name: string): string {
  return `<< /Type /Font /Subtype /Type1 /BaseFont /${name} /Encoding /WinAnsiEncoding >>`;
}

function streamObject(content: string): string {
  return `<< /Length ${content.length} >>\nstream\n${content}\nendstream`;
}

/** Objects numbered from 1, then where each begins. */
function fileText(objects: readonly string[]): string {
  let text = "%PDF-1.7\n%Wellsweep drawing, 1:1\n%\xe2\xe3\xcf\xd3\n";
  const starts = objects.map((object, i) => {
    const start = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return start;
  });
  const table = starts.map((start) => `${String(start).padStart(10, "0")} 00000 n \n`).join("");
  const size = objects.length + 1;
  return `${text}xref\n0 ${size}\n0000000000 65535 f \n${table}trailer\n<< /Size ${size} /Root 1 0 R /Info 5 0 R >>\nstartxref\n${text.length}\n%%EOF\n`;
}

function contentOf({ lines, circles, texts }: Page): string {
  return [
    "1 J 1 j",
    ...lines.map(lineContent),
    ...circles.map(circleContent),
    ...texts.map(textContent),
  ].join("\n");
}

function lineContent({ pen, points: row, closed = false, filled = false }: PageLine): string {
  const path: string[] = [];
  for (let i = 0; i < row.length; i += 2)
    path.push(`${points(row[i]!)} ${points(row[i + 1]!)} ${i === 0 ? "m" : "l"}`);
  return `${stateOf(pen)} ${path.join(" ")} ${filled ? "b" : closed ? "s" : "S"}`;
}

function circleContent({ pen, center: [x, y], radius }: PageCircle): string {
  const h = radius * HANDLE;
  const at = (dx: number, dy: number) => `${points(x + dx)} ${points(y + dy)}`;
  const quarter = (...places: readonly string[]) => `${places.join(" ")} c`;
  return [
    `${stateOf(pen)} ${at(radius, 0)} m`,
    quarter(at(radius, h), at(h, radius), at(0, radius)),
    quarter(at(-h, radius), at(-radius, h), at(-radius, 0)),
    quarter(at(-radius, -h), at(-h, -radius), at(0, -radius)),
    quarter(at(h, -radius), at(radius, -h), at(radius, 0)),
    "s",
  ].join(" ");
}

function stateOf(pen: Pen): string {
  const { width, dashes, gray } = PEN_STYLES[pen];
  return `${points(width)} w [${dashes.map(points).join(" ")}] 0 d ${gray} G ${gray} g`;
}

function textContent({ at: [x, y], size, text, anchor = "start", turn = 0, bold = false }: PageText): string {
  const share = { start: 0, middle: 0.5, end: 1 }[anchor];
  const back = share * textWidth(text, size);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const matrix = [cos, sin, -sin, cos].map(plain).join(" ");
  const place = `${points(x - back * cos)} ${points(y - back * sin)}`;
  return `BT 0 g /F${bold ? 2 : 1} ${points(size)} Tf ${matrix} ${place} Tm (${escaped(winAnsiText(text))}) Tj ET`;
}

function escaped(text: string): string {
  return text.replace(/[\\()]/g, "\\$&");
}

function points(mm: number): string {
  return plain(mm * POINTS);
}

/** Without the sign of a zero. */
function plain(value: number): string {
  return String(Number(value.toFixed(DECIMALS)) + 0);
}

/** A byte a letter. */
function latinBytes(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
