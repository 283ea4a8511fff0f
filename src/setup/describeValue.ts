const MAX_TEXT = 60;

/** A value the way the file writes it, shortened to one line; `nothing` when there is none. */
export function describeValue(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return shorten(JSON.stringify(value));
  if (typeof value === "object" && value !== null)
    return Array.isArray(value) ? describeList(value) : describeObject(value);
  return shorten(String(value));
}

function describeList(list: readonly unknown[]): string {
  const plain = list.length <= 6 && list.every((item) => typeof item !== "object" || item === null);
  if (plain) return shorten(`[${list.map(describeValue).join(", ")}]`);
  return `[${list.length} entries]`;
}

function describeObject(object: object): string {
  return shorten(`{${Object.keys(object).slice(0, 8).join(", ")}}`);
}

function shorten(text: string): string {
  return text.length <= MAX_TEXT ? text : `${text.slice(0, MAX_TEXT - 1)}…`;
}
