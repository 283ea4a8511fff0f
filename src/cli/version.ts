import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

let known: string | undefined;

/** The program's version, from the package it stands in: two folders up in the sources, three once built. */
export function packageVersion(): string {
  known ??= readVersion();
  return known;
}

function readVersion(): string {
  const here = fileURLToPath(new URL(".", import.meta.url));
  for (const up of ["../..", "../../.."]) {
    try {
      const found: unknown = JSON.parse(readFileSync(join(here, up, "package.json"), "utf8"));
      const { name, version } = found as { name?: unknown; version?: unknown };
      if (name === "wellsweep" && typeof version === "string") return version;
    } catch {
      // Not there in this layout.
    }
  }
  throw new Error("the package's own package.json is missing; install it again");
}
