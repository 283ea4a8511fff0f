/** What of a drawn element a file of its own must say: there it has no stylesheet. */
const SAID = [
  ...["fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linejoin", "paint-order"],
  ...["font-family", "font-size", "font-weight", "opacity"],
];

/** px above the picture, for its title and note. */
const HEAD = 44;

/** px of a line of the list of curves below the picture. */
const ROW = 16;

/** What a curve of a plot is called, and the piece of its line with its mark that stands in the page's list. */
export interface CurveRow {
  readonly name: string;
  readonly sample: SVGSVGElement;
}

/**
 * A drawn plot as an SVG file: black on white whatever the page's theme, with its title, and nothing of the pose or the
 * cursor. @param svg as it stands in the page; @param curves listed below it
 */
export function plotSvg(
  svg: SVGSVGElement,
  title: string,
  note: string,
  curves: readonly CurveRow[] = [],
): string {
  const copy = inLight(() => styledCopy(svg));
  const { width, height } = svg.viewBox.baseVal;
  copy.removeAttribute("aria-hidden");
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  const list = curves.length * ROW;
  copy.setAttribute("viewBox", `0 ${-HEAD} ${width} ${height + HEAD + list}`);
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height + HEAD + list));
  const said = (text: string, y: number, size: number, weight: number, x = 4) => {
    const line = document.createElementNS("http://www.w3.org/2000/svg", "text");
    line.textContent = text;
    for (const [key, value] of Object.entries({ x, y, "font-size": size, "font-weight": weight }))
      line.setAttribute(key, String(value));
    line.setAttribute("font-family", "Arial Narrow, Arial, sans-serif");
    return line;
  };
  const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [key, value] of Object.entries({
    x: 0,
    y: -HEAD,
    width,
    height: height + HEAD + list,
    fill: "#fff",
  }))
    paper.setAttribute(key, String(value));
  copy.prepend(paper, said(title, 18 - HEAD, 15, 700), said(note, 34 - HEAD, 11, 400));
  for (const [i, { name, sample }] of curves.entries()) {
    const piece = inLight(() => styledCopy(sample));
    for (const [key, value] of Object.entries({ x: 4, y: height + i * ROW }))
      piece.setAttribute(key, String(value));
    copy.append(piece, said(name, height + i * ROW + 10, 11, 400, 44));
  }
  const name = document.createElementNS("http://www.w3.org/2000/svg", "title");
  name.textContent = title;
  copy.prepend(name);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}

function styledCopy(svg: SVGSVGElement): SVGSVGElement {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const [drawn, copied] = [svg, copy].map((root) => [...root.querySelectorAll<SVGElement>("*")]);
  drawn!.forEach((element, i) => {
    const style = getComputedStyle(element);
    const to = copied![i]!;
    for (const key of SAID) {
      const value = style.getPropertyValue(key);
      if (value !== "") to.setAttribute(key, value);
    }
    to.removeAttribute("class");
  });
  for (const [i, element] of drawn!.entries())
    if (element.matches(".plot-pose, .plot-read, .plot-pick")) copied![i]!.remove();
  copy.removeAttribute("class");
  return copy;
}

/** Reads styles as the light page has them; nothing is painted in between. */
function inLight<T>(read: () => T): T {
  const root = document.documentElement;
  const { theme } = root.dataset;
  root.dataset.theme = "light";
  try {
    return read();
  } finally {
    if (theme === undefined) delete root.dataset.theme;
    else root.dataset.theme = theme;
  }
}
