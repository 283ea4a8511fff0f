/** What the table of the definitions says of a name, links as their words; null = it has no such line. */
export function definitionIn(page: string, name: string): string | null {
  for (const line of page.split("\n")) {
    const [, names = "", meaning = ""] = line.split(/(?<!\\)\|/).map((cell) => cell.trim());
    if (names.split(", ").includes(name))
      return meaning.replace(/\[([^\]]+)\]\([^)]*\)/g, "$1").replace(/[*`_]/g, "");
  }
  return null;
}
