import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";

/** The rule of `npm run layers` that folders know each other one way, on arrows drawn for it. */
function judged(...arrows: readonly (readonly [from: string, to: string])[]) {
  const sources = [...new Set(arrows.map(([from]) => from))];
  const modules = sources.map((source) => ({
    source,
    dependencies: arrows.filter(([from]) => from === source).map(([, resolved]) => ({ resolved })),
  }));
  const { status, stderr } = spawnSync(process.execPath, [".ci/folderKnots.mjs"], {
    input: JSON.stringify({ modules }),
    encoding: "utf8",
  });
  return { status, stderr };
}

describe("folders", () => {
  it("may know each other one way", () => {
    expect(judged(["src/a/one.ts", "src/b/two.ts"], ["src/a/deep/three.ts", "src/a/one.ts"]).status).toBe(0);
  });

  it("are in a knot where two know each other, though no two files do", () => {
    const { status, stderr } = judged(["src/a/one.ts", "src/b/two.ts"], ["src/b/three.ts", "src/a/four.ts"]);
    expect(status).toBe(1);
    expect(stderr).toContain("src/a → src/b: src/a/one.ts → src/b/two.ts");
  });

  it("are in a knot where one's own files and its subfolder know each other, or over a third", () => {
    expect(judged(["src/a/one.ts", "src/a/in/two.ts"], ["src/a/in/three.ts", "src/a/four.ts"]).status).toBe(
      1,
    );
    const round = [
      ["src/a/one.ts", "src/b/one.ts"],
      ["src/b/two.ts", "src/c/one.ts"],
      ["src/c/two.ts", "src/a/two.ts"],
    ] as const;
    expect(judged(...round).stderr).toContain("src/a, src/b, src/c");
    expect(judged(...round.slice(0, 2)).status).toBe(0);
  });
});
