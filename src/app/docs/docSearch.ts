import { definitionIn, pageText } from "./docPages.ts";
import { PAGES } from "./pageList.ts";
import { anchorOf } from "./reader.ts";

/** A stretch of a page that a search can lead to: what stands under a heading, or a line of the definitions. */
export interface Section {
  readonly page: string;
  /** Of the page, as the list has it. */
  readonly title: string;
  readonly heading: string;
  /** As links name it. */
  readonly anchor: string;
  readonly text: string;
}

/** Every section of every page listed. @throws Error where one cannot be fetched */
export async function allSections(): Promise<readonly Section[]> {
  const read = PAGES.map(async ([page, title]) => sectionsOf(page, title, (await pageText(page)) ?? ""));
  return (await Promise.all(read)).flat();
}

/** The sections of a page, without its marks. @param text Markdown */
export function sectionsOf(page: string, title: string, text: string): Section[] {
  const sections: Section[] = [];
  const add = (heading: string, text: string, name = heading) =>
    sections.push({ page, title, heading: heading.replace(/[*`]/g, ""), anchor: anchorOf(name), text });
  let isCode = false;
  for (const line of text.split("\n")) {
    if (line.startsWith("```")) isCode = !isCode;
    const heading = isCode ? null : /^#+ (.*)$/.exec(line)?.[1];
    const names = page === "definitions" ? /^\| ([^|!]+?) +\|/.exec(line)?.[1] : undefined;
    const name = names?.split(", ")[0];
    const meaning = name && definitionIn(line, name);
    const under = sections.at(-1);
    if (heading) add(heading, "");
    else if (names && meaning) add(names, meaning, name);
    else if (under && !/^```|^\|[-| :]+$/.test(line)) {
      const bare = line
        .replace(/^\s*(?:[-*]|\d+\.) /, "")
        .replace(/!?\[([^\]]*)\]\([^)]*\)/g, "$1")
        .replace(/[*`|]|<br>|\b_|_\b/g, " ");
      sections[sections.length - 1] = { ...under, text: `${under.text} ${bare}` };
    }
  }
  return sections.map((section) => ({ ...section, text: section.text.replace(/\s+/g, " ").trim() }));
}

/**
 * Those that have every word typed, each from a word's start on; first those whose headings have them all, and of both those that
 * have them as whole words.
 */
export function sectionsWith(sections: readonly Section[], typed: string): readonly Section[] {
  const words = plain(typed).split(" ").filter(Boolean);
  if (words.length === 0) return [];
  const has = (text: string, end: string) =>
    words.every((word) => ` ${plain(text)} `.includes(` ${word}${end}`));
  const place = ({ heading, text }: Section) => {
    const all = `${heading} ${text}`;
    return [has(heading, " "), has(heading, ""), has(all, " "), has(all, "")].indexOf(true);
  };
  return sections
    .map((section) => ({ section, at: place(section) }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ section }) => section);
}

/** What stands about the first of the words in the section's text, whole if it is there so, or how it begins. */
export function excerpt({ text }: Section, typed: string): string {
  const [word = ""] = plain(typed).split(" ").filter(Boolean);
  const start = `(?<![\\p{L}\\p{N}])${word}`;
  const [whole, begun] = [`${start}(?![\\p{L}\\p{N}])`, start].map((one) =>
    text.search(new RegExp(one, "iu")),
  );
  const at = Math.max(0, whole! < 0 ? begun! : whole!);
  const from = at < 60 ? 0 : text.indexOf(" ", at - 50) + 1;
  const to = text.length - from < 150 ? text.length : text.lastIndexOf(" ", from + 140);
  return `${from > 0 ? "… " : ""}${text.slice(from, to)}${to < text.length ? " …" : ""}`;
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}
