/** One JSON document, ready to print. @throws RangeError for a number JSON cannot hold, so that none turns into null. */
export function jsonText(document: unknown): string {
  const text = JSON.stringify(
    document,
    (key, value: unknown) => {
      if (typeof value === "number" && !Number.isFinite(value)) throw new RangeError(`${key} is ${value}`);
      return value;
    },
    2,
  );
  return `${text}\n`;
}
