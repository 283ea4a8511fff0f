/** `npm start`: builds the workbench, serves it to this machine and opens it; Ctrl-C stops it. */
import { buildWorkbench } from "./buildWorkbench.ts";
import { openInBrowser } from "./openInBrowser.ts";
import { serveFolder } from "./staticServer.ts";

try {
  console.log("Building the workbench …");
  const server = await serveFolder(await buildWorkbench());
  let stopping = false; // Ctrl-C reaches us twice: from the terminal and through the runner
  const stop = (): void => {
    if (stopping) return;
    stopping = true;
    server.close().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  process.on("SIGINT", stop);
  process.on("SIGTERM", stop);
  console.log(`Wellsweep is at ${server.address} (Ctrl-C stops it)`);
  openInBrowser(server.address);
} catch (error) {
  console.error(`npm start: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
}
