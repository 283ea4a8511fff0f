/** Letters of Windows code page 1252 that stand elsewhere in Unicode. */
const CODES = new Map<string, string>(
  [..."€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ"].map((letter, i) => [
    letter,
    String.fromCharCode(0x80 + i),
  ]),
);

/** Written otherwise, and read alike: nothing is told of it. */
const ALIKE: Readonly<Record<string, string>> = {
  "−": "\x96",
  "″": '"',
  "′": "'",
  "→": "to",
  "≈": "about",
  "≤": "at most",
  "≥": "at least",
  "\u2009": " ",
  "\u202f": " ",
  "\u2011": "-",
};

/** The nearest spelling of letters that are no base letter with an accent. Greek and Cyrillic as ISO 843 and GOST 7.79 B have them, from memory. */
const NEAREST = new Map<string, string>(
  Object.entries({
    ...{ ł: "l", Ł: "L", đ: "d", Đ: "D", ħ: "h", Ħ: "H", ı: "i", ŋ: "ng", Ŋ: "Ng", ŧ: "t", Ŧ: "T" },
    ...{ α: "a", β: "v", γ: "g", δ: "d", ε: "e", ζ: "z", η: "i", θ: "th", ι: "i", κ: "k", λ: "l" },
    ...{ μ: "m", ν: "n", ξ: "x", ο: "o", π: "p", ρ: "r", σ: "s", ς: "s", τ: "t", υ: "y", φ: "f" },
    ...{ χ: "ch", ψ: "ps", ω: "o" },
    ...{ а: "a", б: "b", в: "v", г: "g", д: "d", е: "e", ж: "zh", з: "z", и: "i", к: "k", л: "l" },
    ...{ м: "m", н: "n", о: "o", п: "p", р: "r", с: "s", т: "t", у: "u", ф: "f", х: "x", ц: "cz" },
    ...{ ч: "ch", ш: "sh", щ: "shh", ъ: "''", ы: "y", ь: "'", э: "e", ю: "yu", я: "ya", і: "i" },
    ...{ є: "ye", ґ: "g", ђ: "dj", ј: "j", љ: "lj", њ: "nj", ћ: "c", џ: "dz" },
    ...{ "☐": "[ ]", "✕": "x", "✓": "yes", "√": "sqrt", "∞": "infinite", "≠": "not" },
  }),
);

/** Of a letter: its code, what reads alike, or null. */
function written(letter: string): string | null {
  if (/[\x20-\x7e\xa0-\xff]/.test(letter)) return letter;
  return CODES.get(letter) ?? ALIKE[letter] ?? null;
}

/** The nearest spelling: without its accents, or as it is spelled in Latin letters; "?" = there is none. */
function spelled(letter: string): string {
  const base = letter.normalize("NFKD").replace(/\p{M}/gu, "");
  const lower = base.toLowerCase();
  const found = [...base].every((one) => written(one) !== null) ? base : NEAREST.get(base);
  const small = found === undefined && lower !== base ? NEAREST.get(lower) : undefined;
  if (small !== undefined) return `${small.charAt(0).toUpperCase()}${small.slice(1)}`;
  return [...(found ?? "?")].map((one) => written(one) ?? "?").join("");
}

/** Marks that belong to the letter before them are one letter with it. */
function lettersOf(text: string): readonly string[] {
  return [...text.normalize("NFC").replace(/\s+/g, " ")];
}

/** Text as the standard fonts of PDF are addressed, one line; letters they do not have as the nearest they have. */
export function winAnsiText(text: string): string {
  return lettersOf(text)
    .map((letter) => (/\p{M}/u.test(letter) ? "" : (written(letter) ?? spelled(letter))))
    .join("");
}

/** Whether such text is spelled otherwise than it was written. */
export function isSpelledOtherwise(text: string): boolean {
  return lettersOf(text).some((letter) => written(letter) === null);
}

/** Letters of a text for which the fonts have none, and no spelling either, each once: "?" is written for them. */
export function lettersWithout(text: string): readonly string[] {
  const without = lettersOf(text).filter(
    (letter) => written(letter) === null && !/\p{M}/u.test(letter) && spelled(letter).includes("?"),
  );
  return [...new Set(without)];
}
