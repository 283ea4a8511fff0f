import { spawn } from "node:child_process";

/**
 * Shows an address in the person's own browser. Does nothing where there is none to show it in: no
 * screen, no opener, `CI=true`, or WELLSWEEP_NO_OPEN set to anything. Never throws.
 */
export function openInBrowser(address: string): void {
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
