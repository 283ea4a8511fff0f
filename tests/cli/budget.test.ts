import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Captured, captured, capturedJson } from "./captured.ts";

const FILE = "shared/half-ton-limits.json";
const ORDERED = "shared/ordered-knuckle.json";
const OUT_FOLDER = mkdtempSync(join(tmpdir(), "wellsweep-"));
const OUT = join(OUT_FOLDER, "swept.stl");
const VERBS: readonly (readonly string[])[] = [
  ["pose", FILE],
  ["check", FILE],
  ["sweep", FILE],
  ["map", FILE],
  ["envelope", FILE, "--stance", "driving", "--straight", "--out", OUT],
  ["geometry", FILE],
  ["align", FILE],
  ["limits", FILE],
  ["air", FILE],
  ["floor", FILE],
  ["loads", ORDERED],
  ["asbuilt", ORDERED],
  ["order", ORDERED],
  ["window", FILE, "--field", "knuckle.hubFace"],
  ["measure", "shared/tape-measured.json"],
  ["sheet", "shared/tubular-knuckle.json", "--out", join(OUT_FOLDER, "drawn")],
];

/** Those whose answer hangs on how long they search. */
const CUT = VERBS.filter(([verb]) =>
  ["check", "limits", "map", "sweep", "loads", "asbuilt", "window", "measure"].includes(verb!),
);

/** Runs with a clock that is a millisecond on each time it is read. */
function stepped(args: readonly string[]): Captured {
  let read = 0;
  return captured(args, "", () => read++);
}

describe("--budget", () => {
  it.each(VERBS)("%s refuses what is no finite number of seconds above 0", (verb, ...rest) => {
    for (const bad of ["0", "-1", "abc", "", "1e999", "NaN", "5 s", "Infinity"]) {
      const { code, out, error } = captured([verb!, ...rest, `--budget=${bad}`]);
      expect(code).toBe(2);
      expect(out).toBe("");
      expect(error.split("\n")).toHaveLength(2);
      expect(error).toContain("--budget");
    }
  });

  it.each(VERBS.filter(([verb]) => verb !== "envelope"))(
    "%s answers within the shortest one",
    (verb, ...rest) => {
      const { code, out, error } = stepped([verb!, ...rest, "--budget", "0.001"]);
      expect(error).toBe("");
      expect(code).toBeLessThan(2);
      expect(out).not.toMatch(/NaN|Infinity|undefined/);
    },
  );

  it.each(CUT)("%s says in a sentence and in its document that it was spent", (...args) => {
    const text = stepped([...args, "--budget", "0.01"]).out;
    expect(text).toContain("Not finished in the time allowed");
    const document = JSON.parse(stepped([...args, "--budget", "0.01", "--json"]).out);
    expect(document.cutShort).toBe(true);
  });

  it("an envelope falls back to a coarser surface, and says so", () => {
    const args = VERBS.find(([verb]) => verb === "envelope")!;
    const whole = capturedJson([...args, "--side", "left", "--budget", "600"]).document;
    const cut = JSON.parse(stepped([...args, "--side", "left", "--budget", "6", "--json"]).out);
    expect(whole.envelopes[0].cutShort).toBeUndefined();
    expect(cut.envelopes[0].cutShort).toBe(true);
    expect(cut.envelopes[0].within.outside).toBeGreaterThan(whole.envelopes[0].within.outside);
    const { code, error } = stepped([...args, "--budget", "0.001"]);
    expect(code).toBe(2);
    expect(error).toContain("is too little for any surface");
  });
});
