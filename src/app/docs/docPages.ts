/** Each page of `public/docs` as text, loaded when it is opened; part of the build, so also without a network. */
const texts = import.meta.glob<string>("../../../public/docs/*.md", { query: "?raw", import: "default" });

export type PageName = string;

/** The text of a page; null = there is none of that name. */
export async function pageText(name: PageName): Promise<string | null> {
  const load = texts[`../../../public/docs/${name}.md`];
  return load ? load() : null;
}

/** What the table of the definitions says of a name, links as their words but for what only leads on; null = it has no such line. */
export function definitionIn(page: string, name: string): string | null {
  for (const line of page.split("\n")) {
    const [, names = "", meaning = ""] = line.split(/(?<!\\)\|/).map((cell) => cell.trim());
    if (names.split(", ").includes(name))
      return meaning
        .replace(/: \[how\]\([^)]*\)$/, "")
        .replace(/\[([^\]]+)\]\([^)]*\)/g, "$1")
        .replace(/[*`_]/g, "");
  }
  return null;
}
