/** A name inside a sentence. */
export function lower(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

/** A name at the head of a line. */
export function upper(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** `a, b and c`. */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
