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
