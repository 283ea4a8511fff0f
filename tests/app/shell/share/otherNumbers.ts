const SIXTEENTHS = ["", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2"].concat([
  "9/16",
  "5/8",
  "11/16",
  "3/4",
  "13/16",
  "7/8",
  "15/16",
]);

/** Keys whose values are no measurement. */
const KEPT = ["format", "version", "triangles", "kind", "size"];

/**
 * A setup's text with nearly every number another by less than an inch, or by 1 or 2 mm: as a truck that somebody measured for himself.
 * @param seed of the numbers
 */
export function otherNumbers(text: string, seed: number): string {
  let state = seed;
  const random = () => {
    // A linear congruential generator (Numerical Recipes).
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const other = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(other);
    if (typeof value === "object" && value !== null)
      return Object.fromEntries(
        Object.entries(value).map(([key, held]) => [key, KEPT.includes(key) ? held : other(held)]),
      );
    if (typeof value === "number" && Math.abs(value) >= 30) return value + Math.round(4 * random() - 2);
    const told = typeof value === "string" ? /^(-?\d+)(?: \d+\/\d+)?$/.exec(value) : null;
    return told ? `${told[1]} ${SIXTEENTHS[Math.floor(16 * random())]}`.trim() : value;
  };
  return JSON.stringify(other(JSON.parse(text)));
}
