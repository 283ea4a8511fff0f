import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { marked, type Token, type Tokens } from "marked";
import { describe, expect, it } from "vitest";
import { PLOT_KINDS } from "../../../src/app/clear/plots/curveKinds.ts";
import { definitionIn } from "../../../src/app/docs/docPages.ts";
import { excerpt, type Section, sectionsOf, sectionsWith } from "../../../src/app/docs/docSearch.ts";
import { GUIDES, PAGES } from "../../../src/app/docs/pageList.ts";
import { anchorOf, placeOfLink } from "../../../src/app/docs/reader.ts";

const DOCS = join(import.meta.dirname, "..", "..", "..", "public", "docs");
const CLEAR = join(import.meta.dirname, "..", "..", "..", "src", "app", "clear");
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

  it("lists the guides first and the command line last, each once and with a line of its own", () => {
    expect(PAGES.slice(0, 3).map(([page]) => page)).toEqual(GUIDES.map(([page]) => page));
    expect(GUIDES.every(([page]) => page.startsWith("guide-"))).toBe(true);
    expect(PAGES.at(-1)![0]).toBe("command-line");
    for (const column of [0, 1, 2] as const)
      expect(new Set(PAGES.map((one) => one[column])).size).toBe(PAGES.length);
    for (const [page, , about] of PAGES) expect(about, page).toMatch(/^[A-Z][^`]{20,90}\.$/);
  });

  it("lists every page but those of worked trucks, which are at Trucks", () => {
    const listed = PAGES.map(([page]) => `${page}.md`);
    expect(pages.filter((file) => !listed.includes(file) && !file.startsWith("worked-"))).toEqual([]);
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

describe("the search of the documents", () => {
  const sections = PAGES.flatMap(([page, title]) => sectionsOf(page, title, text(page)));
  const found = (typed: string) => sectionsWith(sections, typed);
  const named = ({ page, heading }: Section) => `${page}: ${heading}`;

  it("finds a term first at its definition, and every section that has all words", () => {
    expect(named(found("caster")[0]!)).toBe("definitions: caster");
    expect(named(found("exit codes")[0]!)).toBe("command-line: Exit codes");
    for (const { heading, text } of found("hub face"))
      expect(`${heading} ${text}`).toMatch(/\bhub[\s\S]*\bface|\bface[\s\S]*\bhub/i);
    expect(found("hub face").length).toBeGreaterThan(3);
    expect(found("wheelbarrow")).toEqual([]);
    expect(found(" , ")).toEqual([]);
  });

  it("puts a whole word before one that only begins so", () => {
    const two = sectionsOf(
      "turns",
      "Turns",
      "# Turns\n\n## Rolled\n\nBent round.\n\n## Roll\n\nThe body leans: it is rolled by a roll.\n",
    );
    expect(sectionsWith(two, "roll").map(({ heading }) => heading)).toEqual(["Roll", "Rolled"]);
    const long = { ...two[0]!, text: `${"It rolled on. ".repeat(12)}Then a roll of paper.` };
    expect(excerpt(long, "roll")).toContain("a roll of paper");
  });

  it("finds words from their start on, whatever their case", () => {
    const two = sectionsOf(
      "x",
      "X",
      "# Pairs\nof **Bags**\n## Air\nsee [the map](map.md)\n```\n# no heading\n```",
    );
    expect(two.map(({ heading, text }) => [heading, text])).toEqual([
      ["Pairs", "of Bags"],
      ["Air", "see the map # no heading"],
    ]);
    expect(sectionsWith(two, "AIR").map(({ heading }) => heading)).toEqual(["Air"]);
    expect(sectionsWith(two, "bag of").map(({ heading }) => heading)).toEqual(["Pairs"]);
  });

  it("leads to headings and lines that are there", () => {
    const names = new Map(
      PAGES.map(([page]) => {
        const headings = tokensOf(page).filter(({ type }) => type === "heading");
        return [page, headings.map((one) => anchorOf((one as Tokens.Heading).text))];
      }),
    );
    for (const { page, anchor, heading } of sections) {
      const isLine = definitionIn(text(page), heading.split(", ")[0]!) !== null;
      expect(names.get(page)!.includes(anchor) || isLine, `${page}.md#${anchor}`).toBe(true);
    }
  });

  it("shows what stands about the word", () => {
    const long = {
      page: "x",
      title: "X",
      heading: "H",
      anchor: "h",
      text: `${"so ".repeat(90)}the lip ${"and ".repeat(90)}`,
    };
    expect(excerpt(long, "lip")).toMatch(/^… .*the lip and .* …$/);
    expect(excerpt(long, "lip").length).toBeLessThan(160);
    expect(excerpt({ ...long, text: "the lip" }, "H")).toBe("the lip");
    for (const before of ["“", "(", "/", "half-"])
      expect(excerpt({ ...long, text: long.text.replace("lip", `${before}Lip`) }, "lip"), before).toContain(
        `${before}Lip and`,
      );
  });
});

describe("what a result means", () => {
  const page = text("definitions");

  it("is defined for every plot, number of the alignment and result of any panel that asks", () => {
    const panels = readdirSync(CLEAR, { recursive: true, encoding: "utf8" }).filter((file) =>
      /\.tsx$/.test(file),
    );
    const inPanels = panels.flatMap((file) =>
      [...readFileSync(join(CLEAR, file), "utf8").matchAll(/<(?:Meaning|Fact)\b[^>]*? of="([^"]+)"/g)].map(
        ([, name]) => name!,
      ),
    );
    expect(inPanels).toEqual(expect.arrayContaining(["roll center", "scrub line", "how low it goes"]));
    const asked = [
      ...inPanels,
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
