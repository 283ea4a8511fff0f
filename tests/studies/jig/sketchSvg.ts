import { xmlText } from "../../../src/files/writeSvg.ts";
import type { Sketch, SketchLook, SketchShape } from "../../../src/geometry/sketch.ts";

const HEAD = 24;

/** What each look is drawn with; dashes and weight tell them apart on a black print too. */
const LOOKS: Readonly<Record<SketchLook, string>> = {
  part: 'stroke="#1a1a1a" stroke-width="2.2"',
  datum: 'stroke="#666666" stroke-width="1" stroke-dasharray="10 3 2 3"',
  edge: 'stroke="#1a1a1a" stroke-width="3.4"',
  tape: 'stroke="#0b5cad" stroke-width="1.8"',
  thin: 'stroke="#666666" stroke-width="0.9"',
  off: 'stroke="#a8231a" stroke-width="1.2" stroke-dasharray="4 3"',
};

/** Sketches side by side as SVG on white, one unit a pixel, each under its title. */
export function sketchSvg(sketches: readonly { readonly sketch: Sketch; readonly title: string }[]): string {
  const { sketch } = sketches[0]!;
  const [width, height] = [sketch.width * sketches.length, sketch.height + HEAD];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="12">`,
    `<title>${xmlText(sketches.map(({ title }) => title).join("; "))}</title>`,
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    ...sketches.flatMap(({ sketch: { shapes }, title }, i) => [
      `<g transform="translate(${i * sketch.width} ${HEAD})">`,
      `<text x="8" y="-6" fill="#444444">${xmlText(title)}</text>`,
      ...shapes.map(shapeSvg),
      "</g>",
    ]),
    "</svg>\n",
  ].join("\n");
}

function shapeSvg(shape: SketchShape): string {
  switch (shape.kind) {
    case "line":
      return `<path fill="none" ${LOOKS[shape.look]} d="M${shape.points.map(placeText).join("L")}"/>`;
    case "ring": {
      const [x, y] = shape.at.map(rounded);
      return `<circle fill="#ffffff" ${LOOKS[shape.look]} cx="${x}" cy="${y}" r="${shape.radius}"/>`;
    }
    case "text": {
      const [x, y] = shape.at.map(rounded);
      const weight = shape.isRead ? ' font-weight="700"' : ' fill="#444444"';
      return `<text x="${x}" y="${y}" text-anchor="${shape.anchor}"${weight}>${xmlText(shape.text)}</text>`;
    }
  }
}

function placeText([x, y]: readonly [number, number]): string {
  return `${rounded(x)} ${rounded(y)}`;
}

function rounded(value: number): number {
  return Number(value.toFixed(2));
}
