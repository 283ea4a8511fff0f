/** Bytes of a block: as many as fourteen letters tell with the least left over, 36¹⁴ being a little over 256⁹. */
const BLOCK = 9;

/**
 * Bytes in digits and capital letters alone: a code to be scanned takes 5.5 bits for each of these (ISO/IEC 18004, alphanumeric
 * mode) where any other letter takes 8, and no program that finds links in a text ends one there. RFC 9285, made for such codes,
 * needs signs that do not stand in a link.
 */
export function base36Of(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += BLOCK) {
    const block = bytes.subarray(at, at + BLOCK);
    let value = 0n;
    for (const byte of block) value = (value << 8n) | BigInt(byte);
    text += value.toString(36).toUpperCase().padStart(lettersFor(block.length), "0");
  }
  return text;
}

/** What `base36Of` was given. @throws RangeError what it never gives */
export function bytesOfBase36(text: string): Uint8Array {
  const full = lettersFor(BLOCK);
  const bytes: number[] = [];
  for (let at = 0; at < text.length; at += full) {
    const letters = text.slice(at, at + full);
    const count = Math.floor((letters.length * Math.log2(36)) / 8);
    if (!/^[0-9A-Z]+$/.test(letters) || lettersFor(count) !== letters.length) throw new RangeError("base36");
    let value = 0n;
    for (const letter of letters) value = value * 36n + BigInt(Number.parseInt(letter, 36));
    if (value >> BigInt(8 * count)) throw new RangeError("base36: more than its bytes hold");
    for (let place = count - 1; place >= 0; place--) bytes.push(Number((value >> BigInt(8 * place)) & 255n));
  }
  return Uint8Array.from(bytes);
}

/** Letters that a number of bytes takes. */
function lettersFor(bytes: number): number {
  return Math.ceil((8 * bytes) / Math.log2(36));
}
