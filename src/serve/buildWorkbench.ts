import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { stripVTControlCharacters } from "node:util";
import { build } from "vite";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/**
 * Builds the workbench for use (never a development build, whatever NODE_ENV says) into `dist/app`.
 * @returns the folder that holds the built page, absolute
 * @throws Error with one line that says what could not be built
 */
export async function buildWorkbench(): Promise<string> {
  const environmentBefore = process.env.NODE_ENV;
  process.env.NODE_ENV = "production";
  try {
    await build({
      root: ROOT,
      configFile: join(ROOT, "vite.config.ts"),
      mode: "production",
      logLevel: "silent",
    });
  } catch (error) {
    throw new Error(`the workbench could not be built: ${oneLine(error)}`, { cause: error });
  } finally {
    if (environmentBefore === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = environmentBefore;
  }
  return join(ROOT, "dist", "app");
}

/** What went wrong and where, on one line; the bundler heads its errors with a count and draws the place. */
function oneLine(error: unknown): string {
  const text = stripVTControlCharacters(error instanceof Error ? error.message : String(error));
  const lines = text.split("\n").map((line) => line.trim());
  const what =
    lines.find((line) => line !== "" && !/^Build failed with \d+ errors?:?$/.test(line)) ?? "unknown error";
  const place = /\[ (\S+:\d+:\d+) \]/.exec(text)?.[1];
  return place ? `${place}: ${what}` : what;
}
