/** `npm start`: builds the workbench, serves it to this machine and opens it; Ctrl-C stops it. */

import { spawn } from "node:child_process";
import { buildWorkbench } from "./buildWorkbench.ts";
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

/**
 * Shows an address in the person's own browser. Does nothing where there is none to show it in: no
 * screen, no opener, `CI=true`, or WELLSWEEP_NO_OPEN set to anything. Never throws.
 */
function openInBrowser(address: string): void {
  const env = process.env;
  if (env.CI === "true" || env.WELLSWEEP_NO_OPEN) return;
  const [command, args] = opener(address);
  // Without a screen the opener would start a text browser in this very terminal.
  if (command === "xdg-open" && !env.DISPLAY && !env.WAYLAND_DISPLAY) return;
  const child = spawn(command, args, { stdio: "ignore", detached: true });
  child.on("error", () => {}); // no opener installed; the address is printed anyway
  child.unref();
}

function opener(address: string): [command: string, args: string[]] {
  if (process.platform === "darwin") return ["open", [address]];
  if (process.platform === "win32") return ["cmd", ["/c", "start", "", address]];
  return ["xdg-open", [address]];
}
