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

/**
 * Characters that show nothing and do something: controls (of a terminal too), line and paragraph separators, marks that
 * turn the direction of the text around them (Unicode Standard Annex 9, bidirectional formatting characters).
 */
const UNSEEN = /[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** The same of a text in lines: their ends and tabs stay. */
const UNSEEN_IN_LINES = /(?!\r?\n|\t)[\p{Cc}\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Text of somebody else on one line, such as a file's name: what would act on the reader's screen is written as JSON escapes it. */
export function visibleText(text: string): string {
  return text.replace(UNSEEN, escaped);
}

/** A whole text in lines, ready to print. JSON stays the same document. */
export function visibleLines(text: string): string {
  return text.replace(UNSEEN_IN_LINES, escaped);
}

function escaped(character: string): string {
  const short = JSON.stringify(character).slice(1, -1);
  return short !== character ? short : `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`;
}
