import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runs } from "../runs.ts";
import { captured, coarseClock } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";
import { shellWords } from "./shellWords.ts";

/** How a command line example starts in the README's code blocks; a "$ " before it is allowed. */
const START = /^(?:\$ )?npm run -s wellsweep -- (.*)$/;

interface Example {
  readonly line: string;
  readonly words: string[];
  /** As the comment after it says (`# exit 1`), else 0. */
  readonly exit: number;
}

/** Every example in a page's fenced code blocks. */
function examplesIn(page: string): Example[] {
  const blocks = [...page.matchAll(/^```[^\n]*\n([\s\S]*?)^```/gm)].map((block) => block[1] ?? "");
  return blocks
    .flatMap((block) => block.replaceAll(/\\\n\s*/g, "").split("\n"))
    .flatMap((line) => {
      const [, command] = START.exec(line.trim()) ?? [];
      if (command === undefined) return [];
      return [
        {
          line: line.trim(),
          words: shellWords(command),
          exit: Number(/#.*\bexit (\d)\b/.exec(line)?.[1] ?? 0),
        },
      ];
    });
}

/** Every page in the long run; on every change those of worked trucks, of which other tests check the files, are left out. */
const PAGES: readonly (readonly [string, readonly string[]])[] = [
  ["README.md", ["check", "pose", "sweep", "envelope"]],
  ["public/docs/from-wish-to-part.md", ["order", "check", "window", "loads", "sheet", "asbuilt"]],
  ["public/docs/measure.md", ["measure"]],
  ...readdirSync("public/docs")
    .filter((name) => name.startsWith("worked-"))
    .map((name): [string, string[]] => [join("public/docs", name), ["check"]])
    .filter(([page]) => page.endsWith(".md")),
];

describe.each(PAGES.slice(0, runs(1, PAGES.length)))("the command line examples of %s", (page, wanted) => {
  const folder = setupFolder();
  const examples = examplesIn(readFileSync(page, "utf8"));

  it("are there, with each verb they are to show", () => {
    const verbs = new Set(examples.map(({ words }) => words[0]));
    for (const verb of wanted) expect([...verbs]).toContain(verb);
  });

  it("end with the exit code they are said to", () => {
    for (const { line, words, exit } of examples) {
      // What is written goes to a folder that is removed.
      const { code, out, error } = captured(
        words.map((word, i) =>
          /^--(out|write|apply)$/.test(words[i - 1] ?? "") ? join(folder.path, word) : word,
        ),
        "",
        // How fine a surface is, no exit code tells.
        words[0] === "envelope" ? coarseClock(10) : undefined,
      );
      expect({ line, code, error: exit === 2 ? "" : error }).toEqual({ line, code: exit, error: "" });
      expect((exit === 2 ? error : out).trim()).not.toBe("");
    }
  }, 300_000);
});

describe("the reader of examples", () => {
  it("takes commands in code blocks alone, with quotes, line breaks and the exit code after #", () => {
    const page = [
      "npm run -s wellsweep -- not in a block",
      "```sh",
      '$ npm run -s wellsweep -- check a.json --variant "narrow hub"   # clear',
      "npm run -s wellsweep -- pose a.json \\",
      "    --travel '-3 3/4'  # rubs: exit 1",
      "npm ci",
      "```",
    ].join("\n");
    expect(examplesIn(page).map(({ words, exit }) => [words, exit])).toEqual([
      [["check", "a.json", "--variant", "narrow hub"], 0],
      [["pose", "a.json", "--travel", "-3 3/4"], 1],
    ]);
  });

  it("refuses what only a shell can do", () => {
    expect(() => examplesIn("```\nnpm run -s wellsweep -- sweep a.json --csv > a.csv\n```")).toThrow(
      /only a shell/,
    );
  });
});
