/** A text in lines of about so many letters, broken at its spaces. */
export function lines(text: string, letters: number): readonly string[] {
  const written: string[] = [];
  for (const word of text.split(" ")) {
    const last = written.at(-1);
    if (last === undefined || last.length + 1 + word.length > letters) written.push(word);
    else written[written.length - 1] = `${last} ${word}`;
  }
  return written;
}
