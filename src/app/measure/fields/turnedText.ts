import { hasWithin, splitWithin } from "../../../units/withinText.ts";

/** One number alone, whole, broken or decimal, with its unit or none. */
const ONE_NUMBER = /^[\d.,]+(?:[ -]\d+\/\d+|\/\d+)?(?: ?(?:in|mm|cm|"))?$/i;

/**
 * A text as a field that reads the other way shows it, and as it is kept: `-5 7/8`, five and seven eighths ahead, is `5 7/8`
 * behind. Turned twice a number is itself; what is no number keeps what was typed within parentheses.
 */
export function turnedText(text: string): string {
  if (hasWithin(text)) {
    const split = splitWithin(text);
    if (split?.ok) return `${turnedText(split.value)} ± ${split.within}`;
  }
  const plain = text.trim();
  if (plain === "" || /^0+(?:\.0*)?$/.test(plain)) return plain;
  const kept = /^0 - \((.*)\)$/.exec(plain);
  if (kept) return kept[1]!;
  const minus = /^[-−] ?(.*)$/.exec(plain);
  if (minus && ONE_NUMBER.test(minus[1]!)) return minus[1]!;
  return ONE_NUMBER.test(plain) ? `-${plain}` : `0 - (${plain})`;
}
