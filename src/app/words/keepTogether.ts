/** Keeps a length on one line: the spaces inside `27 5/16 in` do not break. For text that is shown, not compared. */
export function keepTogether(text: string): string {
  return text.replace(/(\d) (?=\d+\/\d)/g, "$1\u00a0").replace(/(\d) (?=(?:in|mm)\b)/g, "$1\u00a0");
}
