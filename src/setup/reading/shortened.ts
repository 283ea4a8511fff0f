/** A text cut to so many characters, the last one an ellipsis; none is cut in two. */
export function shortened(text: string, most: number): string {
  if (text.length <= most) return text;
  const start = text.slice(0, most - 1);
  return `${/[\ud800-\udbff]$/.test(start) ? start.slice(0, -1) : start}…`;
}
