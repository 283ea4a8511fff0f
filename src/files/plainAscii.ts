/** Text as a format of ASCII alone can hold it: typographic quotes as straight ones, `?` for all else that is not printable ASCII. */
export function plainAscii(text: string): string {
  return text
    .replace(/[“”]/g, '"')
    .replace(/[‘’]/g, "'")
    .replace(/[^\x20-\x7e]/g, "?");
}
