import type { Page } from "../../geometry/page.ts";
import { fileWords } from "../wording/fileStem.ts";
import { type FlatPattern, patternPage, patternSheets } from "./flatPattern.ts";
import { type PaperName, type ShopFile, shopFile } from "./shopFile.ts";

/** A pattern and the file name it would like, without its ending. */
export interface Named {
  readonly stem: string;
  readonly pattern: FlatPattern;
}

/** What all patterns of a kind together are called on paper. */
const TOGETHER = { template: "templates", plate: "plates", "trim template": "trim-templates" } as const;

/** Each on a page of its own size as SVG, what is cut flat as DXF too, and all on sheets of the paper as one PDF. */
export function patternFiles(
  patterns: readonly Named[],
  kind: keyof typeof TOGETHER,
  title: string,
  paper: PaperName,
  taken: Set<string>,
): { readonly files: readonly ShopFile[]; readonly pages: readonly Page[] } {
  if (patterns.length === 0) return { files: [], pages: [] };
  const pages = patterns.flatMap(({ pattern }) => patternSheets(pattern, paper));
  const files = patterns.flatMap(({ stem, pattern }) => {
    const name = freeStem(stem, taken);
    const page = patternPage(pattern);
    const svg = shopFile(`${name}.svg`, kind, pattern.title, { format: "svg", page }, { scale: "1:1" });
    if (kind === "template") return [svg];
    const { units } = pattern;
    return [
      svg,
      shopFile(`${name}.dxf`, kind, pattern.title, { format: "dxf", page, units }, { scale: "1:1" }),
    ];
  });
  const all = { format: "pdf", pages, title } as const;
  return {
    pages,
    files: [...files, shopFile(`${TOGETHER[kind]}.pdf`, kind, title, all, { scale: "1:1", paper })],
  };
}

/** Longest name of a file without its ending and what stands before all names, bytes. */
const LONGEST = 80;

/** A name as a file may be called everywhere, `template-lower-post-low`, with a number where it is taken; notes it as taken. */
function freeStem(words: string, taken: Set<string>): string {
  const plain = fileWords(words.toLowerCase(), LONGEST);
  for (let i = 1; ; i++) {
    const stem = i === 1 ? plain : `${plain}-${i}`;
    if (taken.has(stem)) continue;
    taken.add(stem);
    return stem;
  }
}
