/** Puts a real minus sign where a hyphen stands for one. */
export function withMinus(text: string): string {
  return text.replace(/^-/, "−");
}
