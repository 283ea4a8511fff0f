const MAX_TEXT = 60;

/** A value the way the file writes it, shortened to one line; `nothing` when there is none. */
export function describeValue(value: unknown): string {
  if (value === undefined) return "nothing";
  if (typeof value === "string") return shortened(JSON.stringify(value.slice(0, MAX_TEXT)), MAX_TEXT);
  if (typeof value === "object" && value !== null)
    return Array.isArray(value) ? describeList(value) : describeObject(value);
  // JSON can write 1e999, which no number can hold: infinity is not what stands there.
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return "a number too large";
  return shortened(String(value), MAX_TEXT);
}

function describeList(list: readonly unknown[]): string {
  const plain = list.length <= 6 && list.every((item) => typeof item !== "object" || item === null);
  if (plain) return shortened(`[${list.map(describeValue).join(", ")}]`, MAX_TEXT);
  return `a list of ${list.length}`;
}

function describeObject(object: object): string {
  return shortened(`{${Object.keys(object).slice(0, 8).join(", ")}}`, MAX_TEXT);
}

/** A text cut to so many characters, the last one an ellipsis; none is cut in two. */
export function shortened(text: string, most: number): string {
  if (text.length <= most) return text;
  const start = text.slice(0, most - 1);
  return `${/[\ud800-\udbff]$/.test(start) ? start.slice(0, -1) : start}…`;
}
