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

/** Writes an attribute where it says something else: one written anew as it was is laid out and painted anew. */
export function writeAttribute(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
