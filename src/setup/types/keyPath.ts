const STEP = /\.?([$\w]+)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/y;

/** The path that `keyText` wrote: `truck.body[1].points[0]`; null for text it never writes or has shortened. */
export function parseKeyText(text: string): KeyPath | null {
  const path: (string | number)[] = [];
  let at = 0;
  while (at < text.length) {
    STEP.lastIndex = at;
    const [whole, key, position, quoted] = STEP.exec(text) ?? [];
    if (whole === undefined || (key !== undefined && whole.startsWith(".") === (at === 0))) return null;
    const quotedKey = quoted === undefined ? undefined : (JSON.parse(quoted) as string);
    if (quotedKey?.endsWith("…")) return null;
    path.push(position === undefined ? (key ?? quotedKey ?? "") : Number(position));
    at += whole.length;
  }
  return path;
}

/** Where something is in a document: object keys and list positions from the top. */
export type KeyPath = readonly (string | number)[];

/** The path as a person reads it: `truck.body[1].points[0]`; "" for the top. Keys that are not plain names are quoted. */
export function keyText(path: KeyPath): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else if (step.length > 40 || !/^[$\w]+$/.test(step))
      text += `[${JSON.stringify(step.length > 40 ? `${step.slice(0, 39)}…` : step)}]`;
    else text += text === "" ? step : `.${step}`;
  }
  return text;
}

/** What a document holds at a path; undefined when there is nothing. */
export function valueAt(document: unknown, path: KeyPath): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** Whether `path` is `start` or lies inside it. */
export function isWithin(path: KeyPath, start: KeyPath): boolean {
  return start.length <= path.length && start.every((step, i) => step === path[i]);
}
