import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { packagedBrowser } from "./packagedBrowser.ts";

/** What to start, how, and where it was found. */
export interface FoundBrowser {
  readonly executablePath: string;
  readonly args: readonly string[];
  /** The whole environment of the browser's process. */
  readonly env: Readonly<Record<string, string>>;
  readonly source: "CHROME_PATH" | "system" | "package";
}

/** WebGL drawn in software, so that every machine draws alike; and no talk with any other machine. */
const BROWSER_ARGS: readonly string[] = [
  "--no-sandbox",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
  "--ignore-gpu-blocklist",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

const COMMANDS = ["google-chrome", "google-chrome-stable", "chromium", "chromium-browser"];

const USUAL_FOLDERS: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: ["/usr/bin", "/usr/local/bin", "/snap/bin"],
};

const USUAL_FILES: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: ["/opt/google/chrome/chrome"],
  darwin: [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ],
  win32: ["PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA"].flatMap((name) => {
    const folder = process.env[name];
    return folder ? [join(folder, "Google", "Chrome", "Application", "chrome.exe")] : [];
  }),
};

/**
 * Finds a Chrome or Chromium: the one CHROME_PATH names, else one installed on this machine, else the one
 * that comes as a package. WELLSWEEP_BROWSER=system or =packaged asks for one of the last two.
 * @throws Error that says how to mend it; without a browser the browser tests fail, they are never skipped
 */
export async function findBrowser(): Promise<FoundBrowser> {
  const wanted = process.env.WELLSWEEP_BROWSER ?? "";
  if (!["", "system", "packaged"].includes(wanted)) {
    throw new Error(`WELLSWEEP_BROWSER is "${wanted}"; set it to "system" or "packaged", or leave it out`);
  }
  const named = process.env.CHROME_PATH;
  if (named && wanted === "") {
    if (!starts(named))
      throw new Error(`CHROME_PATH names ${named}, which does not start; mend it or unset it`);
    return { executablePath: named, args: BROWSER_ARGS, env: environment({}), source: "CHROME_PATH" };
  }
  const installed = wanted === "packaged" ? undefined : candidates().find(starts);
  if (installed)
    return { executablePath: installed, args: BROWSER_ARGS, env: environment({}), source: "system" };
  const mend = "install Chrome or Chromium, or set CHROME_PATH to one";
  if (wanted === "system") throw new Error(`no browser on this machine: ${mend}`);
  try {
    const { executablePath, env } = await packagedBrowser();
    return { executablePath, args: BROWSER_ARGS, env: environment(env), source: "package" };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`no browser for the browser tests: ${mend} (${why})`, { cause: error });
  }
}

function candidates(): string[] {
  const onPath = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  const folders = [...onPath, ...(USUAL_FOLDERS[process.platform] ?? [])];
  const commands = COMMANDS.flatMap((command) => folders.map((folder) => join(folder, command)));
  return [...new Set([...commands, ...(USUAL_FILES[process.platform] ?? [])])];
}

/** Some systems put a script under a browser's name that only says how to install it. */
function starts(path: string): boolean {
  if (!existsSync(path)) return false;
  if (process.platform === "win32") return true; // asked for its version there, Chrome opens a window
  try {
    execFileSync(path, ["--version"], { stdio: "ignore", timeout: 30_000 });
    return true;
  } catch {
    return false;
  }
}

function environment(extra: Readonly<Record<string, string>>): Record<string, string> {
  const own = Object.entries(process.env).filter(
    (entry): entry is [string, string] => entry[1] !== undefined,
  );
  return { ...Object.fromEntries(own), ...extra };
}
