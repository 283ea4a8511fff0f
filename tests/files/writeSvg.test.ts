import { describe, expect, it } from "vitest";
import { svgText, xmlText } from "../../src/files/writeSvg.ts";
import { drawingCase } from "./drawingCase.ts";

interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/** Tags in order, with the text right after each; refuses what is not well nested or marked up. */
function tagsOf(svg: string): Tag[] {
  const open: string[] = [];
  const tags: Tag[] = [];
  const plain = svg.replace(/<!--.*?-->/g, "");
  for (const [, close, name, list, self, text] of plain.matchAll(
    /<(\/?)([a-z]+)((?: [a-z-]+="[^"<]*"| xmlns="[^"]*"| viewBox="[^"]*")*)(\/?)>([^<]*)/gi,
  )) {
    if (close) expect(open.pop()).toBe(name);
    else {
      const attributes = Object.fromEntries(
        [...list!.matchAll(/ ([a-zA-Z-]+)="([^"]*)"/g)].map((m) => [m[1]!, m[2]!]),
      );
      tags.push({ name: name!, attributes, text: text!.trim() });
      if (!self) open.push(name!);
    }
    expect(text).toMatch(/^(?:[^&]|&(?:amp|lt|gt|quot);)*$/);
  }
  expect(open).toEqual([]);
  // Everything between < and > was understood.
  expect(plain.split("<").length - 1).toBe([...plain.matchAll(/<(\/?)([a-z]+)[^<>]*>/gi)].length);
  return tags;
}

/** Points of a path of absolute M, L and Z alone, by subpath. */
function subpathsOf(d: string): [number, number][][] {
  return d.split(/(?=M)/).map((part) => {
    expect(part).toMatch(/^M[-\d.e]+ [-\d.e]+(?:L[-\d.e]+ [-\d.e]+)*Z?$/);
    return [...part.matchAll(/[ML]([-\d.e]+) ([-\d.e]+)/g)].map((m): [number, number] => [
      Number(m[1]),
      Number(m[2]),
    ]);
  });
}

describe.each([
  ["mm", 100],
  ["in", 101.6],
] as const)("SVG of a drawing in %s", (units, barLength) => {
  const svg = svgText(drawingCase(units));
  const tags = tagsOf(svg);
  const root = tags[0]!;
  const [left, top, width, height] = root.attributes.viewBox!.split(" ").map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const groups = svg
    .split(/<g /)
    .slice(1)
    .map((group) => group.slice(0, group.indexOf("</g>")));

  it("is 1:1: as many millimeters as its viewBox has units, both ways", () => {
    expect(root.name).toBe("svg");
    expect(root.attributes.width).toBe(`${width}mm`);
    expect(root.attributes.height).toBe(`${height}mm`);
    expect(root.attributes.preserveAspectRatio).toBeUndefined();
  });

  it("draws the truck's own coordinates, v upward, holes left out of the fill", () => {
    const [envelope] = groups;
    const d = / d="([^"]+)"/.exec(envelope!)![1]!;
    expect(subpathsOf(d)).toEqual([
      [
        [100, -200],
        [354, -200],
        [354, -454],
        [100, -454],
      ],
      [
        [150, -250],
        [150, -377],
        [277, -377],
        [277, -250],
      ],
    ]);
    expect(d.match(/Z/g)).toHaveLength(2);
    expect(envelope).toContain('fill-rule="evenodd"');
    expect(groups[2]).toMatch(/d="M0 0L50 -10L60 30" fill="none"/);
  });

  it("keeps all that is drawn and written on the sheet", () => {
    for (const group of groups) {
      for (const [, d] of group.matchAll(/ d="([^"]+)"/g)) {
        for (const [x, y] of subpathsOf(d!).flat()) {
          expect(x).toBeGreaterThan(left);
          expect(x).toBeLessThan(left + width);
          expect(y).toBeGreaterThan(top);
          expect(y).toBeLessThan(top + height);
        }
      }
    }
    for (const { attributes, text } of tags.filter((tag) => tag.name === "text")) {
      expect(Number(attributes.x)).toBeGreaterThan(left);
      expect(Number(attributes.x) + 0.5 * Number(attributes["font-size"]) * text.length).toBeLessThan(
        left + width,
      );
      expect(Number(attributes.y)).toBeGreaterThan(top);
      expect(Number(attributes.y)).toBeLessThan(top + height);
    }
  });

  it("tells kinds of lines apart by dashes and weight, and samples each in a legend", () => {
    const looks = (text: string) =>
      [/stroke-dasharray="([^"]*)"/.exec(text)?.[1] ?? "", /stroke-width="([^"]*)"/.exec(text)?.[1]].join(
        "|",
      );
    const kinds = new Map(groups.map((group) => [/class="(\w+)"/.exec(group)![1]!, looks(group)]));
    expect([...kinds.keys()]).toEqual(["envelope", "part", "ring"]);
    expect(new Set([...kinds.values()].map((look) => look.split("|")[0])).size).toBe(3);
    const samples = [...svg.matchAll(/<path class="sample"[^>]*>/g)].map(([tag]) => looks(tag));
    expect(samples).toEqual([...kinds.values()]);
  });

  it("has a bar of the length it names, a title and the cautions", () => {
    const bar = tags.find((tag) => tag.attributes.class === "scale-bar")!.attributes.d!;
    const [, from, to] = /^M([-\d.]+) [-\d.]+H([-\d.]+)/.exec(bar)!;
    expect(Number(to) - Number(from)).toBeCloseTo(barLength, 3);
    const texts = tags.filter((tag) => tag.name === "text").map((tag) => tag.text);
    expect(texts).toContain("Truck &lt;&quot;A&amp;B&quot;&gt; 5 5/8″");
    expect(texts.some((text) => text.startsWith(units === "in" ? "4 in" : "100 mm"))).toBe(true);
    expect(texts).toContain("No statement of safety.");
  });
});

it("text that XML cannot hold becomes spaces, marks are marked up", () => {
  expect(xmlText('a<b>&"c"')).toBe("a&lt;b&gt;&amp;&quot;c&quot;");
  expect(xmlText("a\u0000b\u001fc\ufffed\ud800e\u{1f600}f")).toBe("a b c d e\u{1f600}f");
});
