import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Plugin, transformWithOxc } from "vite";

/** What of `public` the page itself shows or is installed with, and the pictures of its documents, whose text is in the build. */
const PUBLIC_FILES = /^[^/]+\.(?:svg|webmanifest)$|^docs\/.+\.(?:svg|png)$/;

/**
 * Builds the service worker: its source with the list of all files of the build and a version made of their content, so
 * that any change of the page is a change of the worker, which is how browsers find updates.
 * @param workerSource the worker's source, below the project's root
 */
export function serviceWorkerPlugin(workerSource: string): Plugin {
  let root = "";
  let publicDir = "";
  return {
    name: "service-worker",
    apply: "build",
    configResolved(config) {
      ({ root, publicDir } = config);
    },
    generateBundle: {
      order: "post",
      async handler(_, bundle) {
        const publicFiles = readdirSync(publicDir, { recursive: true, encoding: "utf8" })
          .map((file) => file.replaceAll("\\", "/"))
          .filter((file) => PUBLIC_FILES.test(file));
        const files = [...Object.keys(bundle), ...publicFiles].sort();
        const hash = createHash("sha256");
        for (const output of Object.values(bundle)) {
          hash.update(output.fileName);
          hash.update(output.type === "chunk" ? output.code : output.source);
        }
        for (const file of publicFiles) hash.update(readFileSync(join(publicDir, file)));
        const sourcePath = join(root, workerSource);
        const source = readFileSync(sourcePath, "utf8");
        hash.update(source);
        // The page by its folder: some servers answer its index.html with a redirect, which no page may be answered with.
        const addresses = files.map((file) => (file === "index.html" ? "./" : `./${file}`));
        const build = { version: hash.digest("hex").slice(0, 16), files: addresses };
        const { code } = await transformWithOxc(source, sourcePath);
        this.emitFile({
          type: "asset",
          fileName: "service-worker.js",
          source: `const __BUILD__ = ${JSON.stringify(build)};\n${code}`,
        });
      },
    },
  };
}
