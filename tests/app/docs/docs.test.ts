import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { marked, type Token, type Tokens } from "marked";
import { describe, expect, it } from "vitest";
import { PLOT_KINDS } from "../../../src/app/clear/plots/curveKinds.ts";
import { definitionIn, PAGES } from "../../../src/app/docs/docPages.ts";
import { anchorOf, placeOfLink } from "../../../src/app/docs/reader.ts";

const DOCS = join(import.meta.dirname, "..", "..", "..", "public", "docs");
const text = (page: string) => readFileSync(join(DOCS, `${page}.md`), "utf8");
const pages = readdirSync(DOCS).filter((file) => file.endsWith(".md"));

/** Every token of a page, those within others too. */
function tokensOf(page: string): Token[] {
  const found: Token[] = [];
  marked.walkTokens(marked.lexer(text(page)), (token) => {
    found.push(token);
  });
  return found;
}

describe("the documents in the page", () => {
  it("lists pages that are there", () => {
    for (const [page] of PAGES) expect(existsSync(join(DOCS, `${page}.md`)), page).toBe(true);
  });

  it.each(pages.map((file) => file.replace(".md", "")))(
    "leads from %s to pages and headings that are there",
    (page) => {
      for (const token of tokensOf(page)) {
        if (token.type !== "link") continue;
        const place = placeOfLink((token as Tokens.Link).href, page);
        if (place === null) continue;
        expect(existsSync(join(DOCS, `${place.page}.md`)), place.page).toBe(true);
        if (place.anchor === null) continue;
        const headings = tokensOf(place.page).filter(({ type }) => type === "heading");
        expect(headings.map((one) => anchorOf((one as Tokens.Heading).text))).toContain(place.anchor);
      }
    },
  );

  it("takes no other address for a page", () => {
    expect(placeOfLink("https://example.org/a.md", "x")).toBeNull();
    expect(placeOfLink("../README.md", "x")).toBeNull();
    expect(placeOfLink("limits.md#stops", "x")).toEqual({ page: "limits", anchor: "stops" });
    expect(placeOfLink("#stops", "x")).toEqual({ page: "x", anchor: "stops" });
  });
});

describe("what a result means", () => {
  const page = text("definitions");

  it("is defined for every plot, number of the alignment and fact of the geometry that asks", () => {
    const asked = [
      ...PLOT_KINDS.map(({ of }) => of),
      ...[
        "camber",
        "toe",
        "steer angle",
        "caster",
        "kingpin inclination",
        "scrub radius",
        "mechanical trail",
      ],
      ...["roll center", "steering ratio", "jacking", "bump steer", "turning circle", "gap"],
    ];
    for (const name of asked) expect(definitionIn(page, name)?.length ?? 0, name).toBeGreaterThan(10);
  });

  it("is the table's line without its marks, and nothing for another name", () => {
    expect(definitionIn("| a, b | see [the map](map.md) *there* | c |", "b")).toBe("see the map there");
    expect(definitionIn(page, "roll center")).toMatch(/sideways off the truck's center plane$/);
    expect(definitionIn(page, "wheelbarrow")).toBeNull();
  });
});
