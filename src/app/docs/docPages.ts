/** Each page of `public/docs` as text, loaded when it is opened; part of the build, so also without a network. */
const texts = import.meta.glob<string>("../../../public/docs/*.md", { query: "?raw", import: "default" });

/** Pages as the reader lists them: by the job's steps, then what is behind it. */
export const PAGES = [
  ["definitions", "What each number means"],
  ["guide-builder", "Five minutes for a builder"],
  ["guide-designer", "Five minutes for a designer"],
  ["guide-salesperson", "Five minutes for a salesperson"],
  ["measuring-in", "Measuring a truck in"],
  ["measure", "Points from tape, plumb bob and angle finder"],
  ["floor", "Stance and floor"],
  ["limits", "Limits of joints, stops and shocks"],
  ["air", "Air springs"],
  ["geometry", "Geometry and alignment"],
  ["envelope", "The swept envelope"],
  ["window", "Windows: how narrow, how wide"],
  ["solve", "What to set: solve for a wanted number"],
  ["chart", "Fit charts"],
  ["change", "What to change"],
  ["odds", "Odds"],
  ["from-wish-to-part", "From a wish to a checked part"],
  ["order", "Orders"],
  ["loads", "Loads"],
  ["drawings", "Drawings"],
  ["jig-and-as-built", "Jig and as-built"],
  ["certified-gaps", "How a gap is proven"],
  ["costs", "What it costs in time"],
  ["command-line", "The command line"],
] as const;

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
