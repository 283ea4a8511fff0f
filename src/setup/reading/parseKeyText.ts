import type { KeyPath } from "../types/keyPath.ts";

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
