import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Plugin, transformWithOxc } from "vite";

const SOURCE = fileURLToPath(new URL("../app/offline/serviceWorker.ts", import.meta.url));
const PUBLIC = fileURLToPath(new URL("../../public/", import.meta.url));

/** What of `public` the page itself shows or is installed with; the documents there are read with a network. */
const PUBLIC_FILES = /\.(?:svg|webmanifest)$/;

/**
 * Builds the service worker: its source with the list of all files of the build and a version made of their content, so
 * that any change of the page is a change of the worker, which is how browsers find updates.
 */
export function serviceWorkerPlugin(): Plugin {
  return {
    name: "service-worker",
    apply: "build",
    generateBundle: {
      order: "post",
      async handler(_, bundle) {
        const publicFiles = readdirSync(PUBLIC).filter((file) => PUBLIC_FILES.test(file));
        const files = [...Object.keys(bundle), ...publicFiles].sort();
        const hash = createHash("sha256");
        for (const output of Object.values(bundle)) {
          hash.update(output.fileName);
          hash.update(output.type === "chunk" ? output.code : output.source);
        }
        for (const file of publicFiles) hash.update(readFileSync(join(PUBLIC, file)));
        const source = readFileSync(SOURCE, "utf8");
        hash.update(source);
        // The page by its folder: some servers answer its index.html with a redirect, which no page may be answered with.
        const addresses = files.map((file) => (file === "index.html" ? "./" : `./${file}`));
        const build = { version: hash.digest("hex").slice(0, 16), files: addresses };
        const { code } = await transformWithOxc(source, SOURCE);
        this.emitFile({
          type: "asset",
          fileName: "service-worker.js",
          source: `const __BUILD__ = ${JSON.stringify(build)};\n${code}`,
        });
      },
    },
  };
}
