/**
 * The known word a mistyped one most likely meant, or null when none is near.
 * Near = edit distance (insert, drop, change, swap neighbors; case ignored) of at most a third of the longer
 * word, at least 1. Among equals: same first letter first, then the order given.
 */
export function nearestWord(typed: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let bestScore = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const longer = Math.max(typed.length, word.length);
    const allowed = Math.max(1, Math.floor(longer / 3));
    if (Math.abs(typed.length - word.length) > allowed) continue; // the distance is at least this
    const distance = editDistance(typed.toLowerCase(), word.toLowerCase());
    if (distance > allowed || distance >= longer) continue; // nothing in common is not a near miss
    const score = distance + (typed[0]?.toLowerCase() === word[0]?.toLowerCase() ? 0 : 0.5);
    if (score < bestScore) {
      best = word;
      bestScore = score;
    }
  }
  return best;
}

/** Optimal string alignment distance; costs length × length, so callers cut long words first. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = last[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      let cost = Math.min(change, last[j]! + 1, row[j - 1]! + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        cost = Math.min(cost, beforeLast[j - 2]! + 1);
      }
      row.push(cost);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
