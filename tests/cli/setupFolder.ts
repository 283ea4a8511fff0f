import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

/** A folder for the setups of one test file, removed after it. */
export function setupFolder(): { path: string; write: (name: string, content: unknown) => string } {
  const path = mkdtempSync(join(tmpdir(), "wellsweep-cli-"));
  afterAll(() => rmSync(path, { recursive: true, force: true }));
  return {
    path,
    /** Writes text or bytes as they are, anything else as JSON. @returns the file's path */
    write(name, content) {
      const file = join(path, name);
      const isRaw = typeof content === "string" || content instanceof Uint8Array;
      writeFileSync(file, isRaw ? content : JSON.stringify(content));
      return file;
    },
  };
}
