import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { serviceWorkerPlugin } from "./src/serve/serviceWorkerPlugin.ts";

/**
 * The workbench: index.html and what it imports, built to plain files that any static server can hold in
 * any folder. Everything it needs is bundled; it asks no other server for anything.
 */
export default defineConfig({
  base: "./",
  plugins: [react(), serviceWorkerPlugin("src/app/shell/offline/serviceWorker.ts")],
  build: {
    outDir: "dist/app",
    emptyOutDir: true,
    target: "es2022",
    // What the first view needs, and the stage (three.js and what draws with it): no other chunk is this big.
    chunkSizeWarningLimit: 1300,
    rolldownOptions: {
      output: {
        // What the first view needs comes as one file: each request takes its time, and no part of it is wanted without the others.
        codeSplitting: { groups: [{ name: "page", tags: ["$initial"] }] },
      },
      // A warning here is an import that will be missing, or come twice, in front of a user: it fails the build.
      onLog(level, log, report) {
        // How long a plug-in took on a busy machine is no fault of the page.
        if (level === "warn" && log.code !== "PLUGIN_TIMINGS") throw new Error(log.message);
        report(level, log);
      },
    },
  },
  worker: { format: "es" },
});
