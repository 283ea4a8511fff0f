import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { asExample, withMine } from "../../src/setup/exampleMarks.ts";
import { captured } from "./captured.ts";
import { setupFolder } from "./setupFolder.ts";

const folder = setupFolder();
const plain = JSON.parse(readFileSync("shared/compact-front-steer.json", "utf8"));
const marked = asExample(plain, "Compact") as object;

function written(name: string, document: unknown): string {
  return folder.write(name, JSON.stringify(document));
}

describe("the command line with an example's numbers", () => {
  it("says so in one line on standard error and in a JSON key; the exit code keeps its meaning", () => {
    const file = written("copy.json", withMine(marked, [["knuckle"]]));
    const text = captured(["pose", file]);
    expect(text.error).toMatch(/^[^\n]*from the example: \d+ numbers are still the example's[^\n]*\n$/);
    const { out, code } = captured(["pose", file, "--json"]);
    const document = JSON.parse(out);
    expect(document.fromExample).toContain("wheel.rimWidth");
    expect(document.fromExample).not.toContain("knuckle.span");
    const own = captured(["pose", written("own.json", plain)]);
    expect([own.code, own.error]).toEqual([code, ""]);
    expect(own.code).toBe(text.code);
  });

  it("says nothing once every number is the truck's own", () => {
    const blocks = Object.keys(plain).map((key) => [key]);
    const file = written("mine.json", withMine(marked, blocks));
    expect(captured(["pose", file]).error).toBe("");
    expect(JSON.parse(captured(["pose", file, "--json"]).out)).not.toHaveProperty("fromExample");
  });
});
