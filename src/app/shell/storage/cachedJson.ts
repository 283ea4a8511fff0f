const texts = new WeakMap<object, string>();

/**
 * The JSON of a value of plain objects and lists that nobody changes in place. What was written before is not written
 * again: of a document of which one field changed, only the way to that field costs anything.
 */
export function cachedJson(value: unknown): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const known = texts.get(value);
  if (known !== undefined) return known;
  const text = Array.isArray(value)
    ? `[${value.map(cachedJson).join(",")}]`
    : `{${Object.entries(value)
        .filter(([, entry]) => entry !== undefined)
        .map(([key, entry]) => `${JSON.stringify(key)}:${cachedJson(entry)}`)
        .join(",")}}`;
  texts.set(value, text);
  return text;
}
