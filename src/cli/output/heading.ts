import type { Setup } from "../../setup/types.ts";

/** Which setup a printed result is of. */
export function heading(setup: Setup): string {
  return setup.variant === null ? setup.name : `${setup.name}, variant "${setup.variant}"`;
}
