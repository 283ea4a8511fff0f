import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { truckOf } from "../../src/app/state/truck.ts";
import { formatIssue } from "../../src/setup/reading/issueList.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();

/** An example truck without variants, changed. */
// biome-ignore lint/suspicious/noExplicitAny: a document as typed, whose keys the test names
function changed(example: string, change: (document: any) => void): string {
  const text = readFileSync(new URL(`../../shared/${example}.json`, import.meta.url), "utf8");
  const document = JSON.parse(text);
  document.variants = [];
  change(document);
  return JSON.stringify(document);
}

/** Trucks that cannot stand as measured: what is at fault, and the key and value that the answer names. */
const TRUCKS: readonly (readonly [string, string, string])[] = [
  [
    "the upper arm's front pivot far above the truck: the wheel does not rise with its lower arm",
    changed("long-bed-steering-box", ({ truck }) => {
      truck.upperArm.frontPivot[2] = 100;
    }),
    "truck.lowerArm.ballJoint: [3/8 in, 28 1/4 in, 8 7/8 in]: the wheel does not rise",
  ],
  [
    "the lower ball joint inboard of its pivots",
    changed("flatbed-long-arms", ({ truck }) => {
      truck.lowerArm.ballJoint[1] = 8;
    }),
    "truck.lowerArm.ballJoint: [",
  ],
  [
    "a span that the upper arm cannot meet",
    changed("half-ton-limits", ({ knuckle }) => {
      knuckle.span = 30;
    }),
    "knuckle.span: 30 in: the upper arm cannot meet",
  ],
];

const VERBS = ["pose", "check", "sweep", "map", "envelope", "geometry", "align", "limits", "air", "floor"];

/** The line of an issue as the command line writes it. */
const lineOf = (file: string, text: string): string => {
  const made = truckOf(text, file, null);
  if (made.ok) throw new Error("expected an issue");
  expect(made.issues.length).toBe(1);
  return `${formatIssue(made.issues[0]!)}\n`;
};

describe.each(TRUCKS)("a truck that cannot stand as measured: %s", (name, text, told) => {
  const file = folder.write(`${name.slice(0, 20)}.json`, text);

  it("is told with key, value and mend, the same by every verb, exit 2", () => {
    const line = `${file}: ${told}`;
    const first = captured(["pose", file]).error;
    expect(first.startsWith(line)).toBe(true);
    expect(first).toMatch(/^[^\n]+\n$/);
    // The workbench has the very same issue.
    expect(lineOf(file, text)).toBe(first);
    for (const verb of VERBS) {
      const out = verb === "envelope" ? ["--out", join(folder.path, "swept.stl")] : [];
      for (const json of [[], ["--json"]])
        expect(captured([verb, file, ...out, ...json]), verb).toEqual({ code: 2, out: "", error: first });
    }
  });
});
