/** `npm start`: builds the workbench, serves it to this machine and opens it; Ctrl-C stops it. */
import { buildWorkbench } from "./buildWorkbench.ts";
import { openInBrowser } from "./openInBrowser.ts";
import { serveFolder } from "./staticServer.ts";

try {
  console.log("Building the workbench …");
  const server = await serveFolder(await buildWorkbench());
  console.log(`Wellsweep is at ${server.address} (Ctrl-C stops it)`);
  openInBrowser(server.address);

  const stop = (): void => {
    server.close().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
} catch (error) {
  console.error(`npm start: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 1;
}
