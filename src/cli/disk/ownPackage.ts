import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** Where the package stands, and its version. */
interface Package {
  readonly folder: string;
  readonly version: string;
}

let known: Package | undefined;

/** The package this program stands in: three folders up in the sources, four once built. */
export function ownPackage(): Package {
  known ??= findPackage();
  return known;
}

function findPackage(): Package {
  const here = fileURLToPath(new URL(".", import.meta.url));
  for (const up of ["../../..", "../../../.."]) {
    const folder = join(here, up);
    try {
      const found: unknown = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
      const { name, version } = found as { name?: unknown; version?: unknown };
      if (name === "wellsweep" && typeof version === "string") return { folder, version };
    } catch {
      // Not there in this layout.
    }
  }
  throw new Error("the package's own package.json is missing; install it again");
}
