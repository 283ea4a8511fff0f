import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";

/** A rule that dependency-cruiser found broken. */
interface Violation {
  readonly rule: { readonly name: string; readonly severity: "error" | "info" };
  readonly from: string;
  readonly to: string;
}

/** The rule of `npm run layers` that folders know each other one way, on arrows drawn for it. */
const judged = (...arrows: readonly (readonly [from: string, to: string])[]) => judgedWith([], arrows);

function judgedWith(
  violations: readonly Violation[],
  arrows: readonly (readonly [from: string, to: string])[],
) {
  const sources = [...new Set(arrows.map(([from]) => from))];
  const modules = sources.map((source) => ({
    source,
    dependencies: arrows.filter(([from]) => from === source).map(([, resolved]) => ({ resolved })),
  }));
  const { status, stderr } = spawnSync(process.execPath, [".ci/folderKnots.mjs"], {
    input: JSON.stringify({ modules, summary: { violations } }),
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

describe("rules of the floors", () => {
  const arrow = ["src/units/one.ts", "src/app/two.ts"] as const;
  const broken = (severity: "error" | "info") => ({
    rule: { name: "units-knows-nothing", severity },
    from: arrow[0],
    to: arrow[1],
  });

  it("fail the run where dependency-cruiser found one broken, with its arrow", () => {
    const { status, stderr } = judgedWith([broken("error")], [arrow]);
    expect(status).toBe(1);
    expect(stderr).toContain("units-knows-nothing: src/units/one.ts → src/app/two.ts");
  });

  it("that only tell something fail nothing", () => {
    expect(judgedWith([broken("info")], [arrow]).status).toBe(0);
  });
});
