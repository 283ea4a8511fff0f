import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { demoDocument, lipAlone } from "../studies/demoModel.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

/** The command line as a process of its own; kept few, since each start takes a second. */
function spawned(args: readonly string[], input?: string) {
  const child = spawnSync(process.execPath, ["--import", "tsx", "src/cli/main.ts", ...args], {
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
    ...(input === undefined ? {} : { input }),
  });
  return { code: child.status, out: child.stdout, error: child.stderr };
}

describe("the command line as a process", () => {
  const folder = setupFolder();
  const lip = folder.write("lip.json", demoDocument(lipAlone()));
  const bare = folder.write("bare.json", demoDocument({ truck: { body: null } }));

  it("prints and exits as it does in this process: rubs 1, bad input 2", () => {
    for (const args of [
      ["check", lip, "--json"],
      ["pose", lip, "--at", "-3 3/4,-0.5", "--travel", "1"],
    ]) {
      expect(spawned(args)).toEqual(captured(args));
    }
  });

  it("reads standard input and prints all of a long answer into a pipe, exit 0", () => {
    const { code, out, error } = spawned(
      ["sweep", "-", "--steps", "600", "--json"],
      JSON.stringify(demoDocument({ truck: { body: null } })),
    );
    expect([code, error]).toEqual([0, ""]);
    expect(out.length).toBeGreaterThan(500_000);
    expect(JSON.parse(out).bySteer).toHaveLength(600);
  });

  it("is quiet when its reader hangs up", () => {
    const command =
      '"$0" --import tsx src/cli/main.ts sweep "$1" --steps 2000 --json | head -n 1; echo $PIPESTATUS';
    const child = spawnSync("bash", ["-c", command, process.execPath, bare], { encoding: "utf8" });
    expect(child.stderr).toBe("");
    expect(child.stdout).toBe("{\n0\n");
  });
});
