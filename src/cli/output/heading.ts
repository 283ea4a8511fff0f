import type { Setup } from "../../setup/types/types.ts";
import { standingWords } from "../../studies/wording/standingWords.ts";

/** Which setup a printed result is of, and whether as bolted on or aligned where that can differ. */
export function heading(setup: Setup): string {
  const standing = standingWords(setup);
  const name = setup.variant === null ? setup.name : `${setup.name}, variant "${setup.variant}"`;
  return standing === null ? name : `${name}, ${standing}`;
}
