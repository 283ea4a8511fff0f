import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runs } from "../runs.ts";
import { captured, coarseClock } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";
import { shellWords } from "./shellWords.ts";

const VERBS = ["pose", "check", "sweep", "envelope", "floor", "order", "sheet", "loads", "measure"];

describe("help", () => {
  it.each([["--help"], ["-h"], ["help"]])(
    "of the program by %s says what it is for, its verbs and exit codes",
    (arg) => {
      const { code, out, error } = captured([arg]);
      expect([code, error]).toEqual([0, ""]);
      expect(out).toMatch(/what\s+touches\s+what/);
      for (const verb of VERBS) expect(out).toMatch(new RegExp(`^  ${verb} `, "m"));
      expect(out).toContain(
        "Exit codes: 0 fine, 1 something rubs or a limit is passed, 2 no answer: bad input or usage,",
      );
    },
  );

  it.each(VERBS)("of %s lists its options, with examples", (verb) => {
    const { code, out, error } = captured([verb, "--help"]);
    expect([code, error]).toEqual([0, ""]);
    for (const option of ["--json", "--variant <NAME>", "Exit codes:"]) expect(out).toContain(option);
    expect(out).toContain(`  wellsweep ${verb} truck.json`);
    expect(captured(["help", verb]).out).toBe(out);
  });

  it("shows only examples that work", () => {
    const folder = setupFolder();
    const demo = JSON.parse(readFileSync("shared/half-ton-limits.json", "utf8"));
    demo.truck.body = demo.truck.body.filter((part: { name: string }) => part.name === "fender lip");
    const ordered = JSON.parse(readFileSync("shared/ordered-knuckle.json", "utf8"));
    // A build goes with the knuckle that its order writes.
    Object.assign(demo, { order: ordered.order, build: ordered.build, knuckle: ordered.knuckle });
    demo.readings = [{ height: "lowerArm.ballJoint", is: "8 1/2" }];
    // A short range: what is swept over travel and steering takes its time.
    demo.travel = { droop: -0.5, bump: 0.5 };
    const file = folder.write("truck.json", demo);
    const catalog = { format: "wellsweep-catalog", version: 1, kind: "brakes", units: "in", items: [] };
    const own = folder.write("our-brakes.json", catalog);
    const examples = ["", ...VERBS].flatMap((verb) =>
      [...captured([verb, "--help"].filter(Boolean)).out.matchAll(/^ {2}wellsweep (.*truck\.json.*)$/gm)].map(
        (m) => m[1] ?? "",
      ),
    );
    expect(examples.length).toBeGreaterThanOrEqual(12);
    // On every change every other one.
    for (const example of examples.filter((_, i) => i % runs(2, 1) === 0)) {
      // What stands after two spaces, or after ">", is for the reader or the shell.
      const words = shellWords(example.replace(/ {2,}.*| > .*/, ""));
      const { code, error } = captured(
        words.map((word, i) => {
          if (word === "truck.json") return file;
          if (word === "our-brakes.json") return own;
          return /^--(out|write|apply|trim)$/.test(words[i - 1] ?? "") ? join(folder.path, word) : word;
        }),
        "",
        coarseClock(10),
      );
      expect([example, code === 2 ? error : ""]).toEqual([example, ""]);
    }
  }, 300_000);
});

describe("help is asked for", () => {
  it.each([
    [["help"], /^Usage: wellsweep VERB FILE/],
    [["help", "help"], /^Usage: wellsweep VERB FILE/],
    [["help", "--help"], /^Usage: wellsweep VERB FILE/],
    [["help", "check"], /^Usage: wellsweep check /],
    [["check", "--help"], /^Usage: wellsweep check /],
    [["check", "truck.json", "--help"], /^Usage: wellsweep check /],
  ])("by %j and printed, exit 0", (args, usage) => {
    const { code, out, error } = captured(args);
    expect([code, error]).toEqual([0, ""]);
    expect(out).toMatch(usage);
  });

  it.each([
    [["help", "chek"], "wellsweep: unknown command 'chek' (Did you mean check?): the verbs are pose, "],
    [["help", "NO_SUCH_VERB"], "wellsweep: unknown command 'NO_SUCH_VERB': the verbs are pose, "],
    [["NO_SUCH_VERB", "--help"], "wellsweep: unknown command 'NO_SUCH_VERB': the verbs are pose, "],
    [
      ["NO_SUCH_VERB", "truck.json", "--json"],
      "wellsweep: unknown command 'NO_SUCH_VERB': the verbs are pose, ",
    ],
    [["help", "check", "truck.json"], "wellsweep: help takes one verb; see wellsweep --help"],
    [["help", "--travel"], "wellsweep: unknown option '--travel'; see wellsweep --help"],
    [[""], "wellsweep: unknown command '': the verbs are pose, "],
  ])("by %j of what is not there: exit 2, one line, nothing printed", (args, line) => {
    const { code, out, error } = captured(args);
    expect([code, out]).toEqual([2, ""]);
    expect(error.startsWith(line)).toBe(true);
    expect(error).toMatch(/^[^\n]+\n$/);
  });
});

describe("--version", () => {
  it.each([["--version"], ["-V"]])("%s prints the package's version", (arg) => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8"));
    expect(captured([arg])).toEqual({ code: 0, out: `${version}\n`, error: "" });
  });
});
