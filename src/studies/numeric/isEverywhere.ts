/** Stretches looked at before a proof is given up. */
const MOST_LOOKS = 256;

/**
 * Whether something is so at every value between two, by stretches that are halved until it is proven over each.
 * @param look what is known of the values within `half` of a middle: proven of all, disproven of one, or nothing
 * @returns false where it is not so somewhere, or not proven
 */
export function isEverywhere(
  from: number,
  to: number,
  look: (middle: number, half: number) => "everywhere" | "nowhere" | "unknown",
): boolean {
  const open: (readonly [middle: number, half: number])[] = [[0.5 * (from + to), 0.5 * Math.abs(to - from)]];
  for (let looks = 0; open.length > 0; looks++) {
    if (looks === MOST_LOOKS) return false;
    const [middle, half] = open.pop()!;
    const found = look(middle, half);
    if (found === "nowhere" || (found === "unknown" && half === 0)) return false;
    if (found === "everywhere") continue;
    for (const way of [-0.5, 0.5]) open.push([middle + way * half, 0.5 * half]);
  }
  return true;
}
