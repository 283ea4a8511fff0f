/** Said with the link to a comparison. */
export const COMPARISON_LINK =
  "This link opens the counter with A, B, the height and the hub face tried as they are here. It holds the truck itself; no server sees it.";

/** What stands beside the code to be scanned; or why there is none. @param characters of the link @param most that can be scanned */
export function codeText(characters: number, most: number): string {
  return characters <= most
    ? "Scan to open this comparison."
    : `No code to scan: the link has ${characters} characters, and a camera reads at most ${most} off paper. Send the link instead.`;
}
