/** Longest name of a file without its ending. */
const LONGEST = 60;

/** A name as a file may be called everywhere, `template-lower-post-low`, with a number where it is taken; notes it as taken. */
export function freeStem(words: string, taken: Set<string>): string {
  const plain = words
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .slice(0, LONGEST);
  for (let i = 1; ; i++) {
    const stem = i === 1 ? plain : `${plain}-${i}`;
    if (taken.has(stem)) continue;
    taken.add(stem);
    return stem;
  }
}
