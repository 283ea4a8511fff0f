import type { Setup } from "../../setup/types/types.ts";

/** As what a truck is shown, of its model's setup; null = it has no targets, so there is but one way it can stand. */
export function standingWords({ alignment }: Setup): string | null {
  const { targets, standing } = alignment;
  if (standing !== undefined) return standing.reached ? "aligned" : "aligned as near as its adjusters go";
  return targets === null ? null : "as bolted on";
}
