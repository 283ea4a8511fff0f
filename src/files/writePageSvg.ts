import type { Page, PageCircle, PageLine, PageText } from "../geometry/page.ts";
import { PEN_STYLES } from "./penStyles.ts";
import { xmlText } from "./writeSvg.ts";

const DECIMALS = 4;

/**
 * A page as SVG, 1:1: width and height in mm and a viewBox of as many units, so that one unit is one millimeter of the paper.
 * y is turned down. Every line has its pen as its class.
 */
export function pageSvgText(page: Page): string {
  const { width, height, title, lines, circles, texts } = page;
  const down = (y: number) => height - y;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${round(width)}mm" height="${round(height)}mm" viewBox="0 0 ${round(width)} ${round(height)}" font-family="Helvetica, Arial, sans-serif">`,
    "<!-- Wellsweep drawing, 1:1 on paper -->",
    `<title>${xmlText(title)}</title>`,
    `<rect width="${round(width)}" height="${round(height)}" fill="#fff"/>`,
    ...lines.map((line) => lineText(line, down)),
    ...circles.map((circle) => circleText(circle, down)),
    ...texts.map((text) => textText(text, down)),
    "</svg>\n",
  ].join("\n");
}

function lineText(
  { pen, points, closed = false, filled = false }: PageLine,
  down: (y: number) => number,
): string {
  let d = "";
  for (let i = 0; i < points.length; i += 2)
    d += `${i === 0 ? "M" : "L"}${round(points[i]!)} ${round(down(points[i + 1]!))}`;
  const fill = filled ? gray(PEN_STYLES[pen].gray) : "none";
  return `<path class="${pen}" d="${d}${closed ? "Z" : ""}" fill="${fill}" ${strokeOf(pen)}/>`;
}

function circleText({ pen, center: [x, y], radius }: PageCircle, down: (y: number) => number): string {
  return `<circle class="${pen}" cx="${round(x)}" cy="${round(down(y))}" r="${round(radius)}" fill="none" ${strokeOf(pen)}/>`;
}

function textText(
  { at: [x, y], size, text, anchor = "start", turn = 0, bold = false }: PageText,
  down: (y: number) => number,
): string {
  const place = `x="${round(x)}" y="${round(down(y))}"`;
  const turned =
    turn === 0 ? "" : ` transform="rotate(${round((-turn * 180) / Math.PI)} ${round(x)} ${round(down(y))})"`;
  const weight = bold ? ' font-weight="700"' : "";
  return `<text ${place} font-size="${size}" text-anchor="${anchor}"${weight}${turned}>${xmlText(text)}</text>`;
}

function strokeOf(pen: PageLine["pen"]): string {
  const { width, dashes, gray: level } = PEN_STYLES[pen];
  const broken = dashes.length === 0 ? "" : ` stroke-dasharray="${dashes.join(" ")}"`;
  return `stroke="${gray(level)}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"${broken}`;
}

function gray(level: number): string {
  const part = Math.round(255 * level)
    .toString(16)
    .padStart(2, "0");
  return `#${part}${part}${part}`;
}

/** Without the sign of a zero. */
function round(mm: number): number {
  return Number(mm.toFixed(DECIMALS)) + 0;
}
