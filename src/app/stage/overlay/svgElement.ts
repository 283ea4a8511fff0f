/** Makes an SVG element with its attributes, inside a parent. */
export function svgElement<K extends keyof SVGElementTagNameMap>(
  parent: SVGElement,
  name: K,
  attributes: Readonly<Record<string, string>> = {},
): SVGElementTagNameMap[K] {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  parent.append(element);
  return element;
}
