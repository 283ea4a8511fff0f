import { execFile } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { mkdtemp, rename, rm, stat, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { promisify } from "node:util";

const PACKAGE = "@sparticuz/chromium";

/** A browser that came as a package, unpacked, and what its process needs in its environment. */
export interface PackagedBrowser {
  readonly executablePath: string;
  readonly env: Readonly<Record<string, string>>;
}

/**
 * Unpacks the browser of the npm package once per version and person, under the system's folder for
 * temporary files, together with the shared libraries (NSS) and fonts that a bare machine lacks.
 * @throws Error where the package has no browser for this machine or cannot be unpacked
 */
export async function packagedBrowser(): Promise<PackagedBrowser> {
  if (process.platform !== "linux" || process.arch !== "x64") {
    throw new Error(
      `${PACKAGE} holds a browser for 64-bit x86 Linux only, not for ${process.platform} ${process.arch}`,
    );
  }
  const user = process.getuid?.() ?? 0;
  const folder = join(tmpdir(), `wellsweep-browser-${packageVersion()}-${user}`);
  if (!existsSync(folder)) await unpackTo(folder);
  // The folder's name can be guessed; do not run what somebody else put there.
  if ((await stat(folder)).uid !== user) throw new Error(`${folder} belongs to someone else; remove it`);
  const libraries = join(folder, "al2023", "lib");
  const inherited = process.env.LD_LIBRARY_PATH;
  return {
    executablePath: join(folder, "chromium"),
    env: {
      LD_LIBRARY_PATH: inherited ? `${libraries}:${inherited}` : libraries,
      FONTCONFIG_PATH: join(folder, "fonts"),
    },
  };
}

function packageVersion(): string {
  // The package exports its entry alone (build/cjs/index.cjs); its package.json lies two folders above that.
  const require = createRequire(import.meta.url);
  const entry = require.resolve("@sparticuz/chromium");
  const packageJson = JSON.parse(readFileSync(join(dirname(entry), "..", "..", "package.json"), "utf8")) as {
    version: string;
  };
  return packageJson.version;
}

/** Two runs may unpack at once: each fills a folder of its own, and the first to finish gives it the name. */
async function unpackTo(folder: string): Promise<void> {
  const staging = await mkdtemp(`${folder}-`);
  try {
    // The package unpacks to the temporary folder, and its libraries only where it believes it runs on the
    // machines it was made for. Both are read from the environment, so it runs in a process of its own.
    await promisify(execFile)(
      process.execPath,
      [
        "--input-type=module",
        "-e",
        `await (await import(${JSON.stringify(PACKAGE)})).default.executablePath()`,
      ],
      {
        cwd: import.meta.dirname,
        env: { ...process.env, TMPDIR: staging, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs20.x" },
      },
    );
    await writeFile(join(staging, "fonts", "fonts.conf"), fontsConf(folder));
    await rename(staging, folder);
  } catch (error) {
    await rm(staging, { recursive: true, force: true });
    if (!existsSync(folder))
      throw new Error(`${PACKAGE} could not be unpacked to ${folder}`, { cause: error });
  }
}

/** The package's own file looks for its fonts in /tmp/fonts, wherever they are. */
function fontsConf(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, "fonts", "fonts")}</dir>
  <cachedir>${join(folder, "fonts-cache")}</cachedir>
</fontconfig>
`;
}
