import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Setup, SetupIssue } from "../../setup/types/types.ts";

/**
 * The first number of a setup that is not finite, as an issue; null = all are. A setup that was read has none: this is
 * for setups put together by other means, since nothing worked out from NaN or infinity is an answer.
 */
export function nonFiniteIssue(setup: Setup, file: string): SetupIssue | null {
  const path = nonFiniteIn(setup, []);
  if (path === null) return null;
  return { file, key: keyText(path.at), value: String(path.value), mend: "must be a finite number" };
}

function nonFiniteIn(value: unknown, at: KeyPath): { readonly at: KeyPath; readonly value: number } | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : { at, value };
  if (typeof value !== "object" || value === null) return null;
  if (value instanceof Float64Array) {
    for (let i = 0; i < value.length; i++)
      if (!Number.isFinite(value[i])) return { at: [...at, i], value: value[i]! };
    return null;
  }
  if (ArrayBuffer.isView(value)) return null; // whole numbers
  for (const [key, inner] of Object.entries(value)) {
    const found = nonFiniteIn(inner, [...at, Array.isArray(value) ? Number(key) : key]);
    if (found !== null) return found;
  }
  return null;
}
