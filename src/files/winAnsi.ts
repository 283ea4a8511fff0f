/** Letters of Windows code page 1252 that stand elsewhere in Unicode, and what is written for others we use. */
const CODES: Readonly<Record<string, string>> = {
  "–": "\x96",
  "—": "\x97",
  "−": "\x96",
  "‘": "\x91",
  "’": "\x92",
  "“": "\x93",
  "”": "\x94",
  "•": "\x95",
  "…": "\x85",
  "″": '"',
  "′": "'",
  "→": "to",
  "≈": "about",
  "\u2009": " ",
  "\u202f": " ",
};

/** Text as the standard fonts of PDF are addressed, one line; "?" for letters they do not have. */
export function winAnsiText(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/./gsu, (letter) => CODES[letter] ?? (/[\x20-\x7e\xa0-\xff]/.test(letter) ? letter : "?"));
}
