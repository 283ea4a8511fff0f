import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "..", "..");
const DOCS = join(ROOT, "public", "docs");
const PAGES = [
  join(ROOT, "README.md"),
  join(ROOT, "DEVELOPERS.md"),
  ...readdirSync(DOCS)
    .filter((name) => name.endsWith(".md"))
    .map((name) => join(DOCS, name)),
];
/** Bytes a picture may have. */
const MOST = 300_000;

/** What a page links to or shows within the repository: file and the heading asked for. */
function linksOf(page: string): { readonly file: string; readonly heading: string | null }[] {
  const text = readFileSync(page, "utf8").replace(/^```[\s\S]*?^```/gm, "");
  return [...text.matchAll(/\]\(([^)\s]+)\)/g)].flatMap(([, target = ""]) => {
    if (/^\w+:/.test(target)) return [];
    const [path = "", heading] = target.split("#");
    return [{ file: path === "" ? page : join(dirname(page), path), heading: heading ?? null }];
  });
}

/** A heading as links name it. */
function slug(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\w\s-]/g, "")
    .trim()
    .replace(/\s+/g, "-");
}

describe.each(PAGES.map((page) => [relative(ROOT, page), page] as const))("%s", (_, page) => {
  it("links to nothing that is not there", () => {
    const broken = linksOf(page).filter(({ file, heading }) => {
      if (!existsSync(file)) return true;
      if (heading === null) return false;
      const headings = [...readFileSync(file, "utf8").matchAll(/^#+ (.*)$/gm)].map(([, words = ""]) =>
        slug(words),
      );
      return !headings.includes(heading);
    });
    expect(broken.map(({ file, heading }) => `${relative(ROOT, file)}#${heading ?? ""}`)).toEqual([]);
  });
});

describe("the pictures of the pages", () => {
  const shown = new Set(PAGES.flatMap((page) => linksOf(page).map(({ file }) => file)));

  it("are all shown somewhere, and none is too heavy for a page", () => {
    const pictures = [DOCS, join(DOCS, "sketches")].flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => /\.(png|svg)$/.test(name))
        .map((name) => join(folder, name)),
    );
    expect(pictures.length).toBeGreaterThan(20);
    expect(pictures.filter((picture) => !shown.has(picture))).toEqual([]);
    expect(pictures.filter((picture) => statSync(picture).size > MOST)).toEqual([]);
  });
});
