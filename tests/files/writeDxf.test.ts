import { describe, expect, it } from "vitest";
import { dxfText } from "../../src/files/writeDxf.ts";
import { drawingCase } from "./drawingCase.ts";

type Group = readonly [code: number, value: string];

/** Group codes and values, two lines each, as the format lays them out. */
function groupsOf(text: string): Group[] {
  const lines = text.split("\r\n");
  expect(lines.pop()).toBe("");
  expect(lines.length % 2).toBe(0);
  return Array.from({ length: lines.length / 2 }, (_, i): Group => {
    expect(lines[2 * i]).toMatch(/^ *\d+$/);
    return [Number(lines[2 * i]), lines[2 * i + 1]!];
  });
}

interface Entity {
  readonly type: string;
  readonly groups: readonly Group[];
}

/** The entities of one section, each from its group 0 to the next. */
function entitiesOf(groups: readonly Group[], section: string): Entity[] {
  const start = groups.findIndex(
    ([code, value], i) => code === 2 && value === section && groups[i - 1]?.[1] === "SECTION",
  );
  const end = groups.findIndex(([code, value], i) => i > start && code === 0 && value === "ENDSEC");
  expect(start).toBeGreaterThan(0);
  const found: { type: string; groups: Group[] }[] = [];
  for (const group of groups.slice(start + 1, end)) {
    if (group[0] === 0) found.push({ type: group[1], groups: [] });
    else found.at(-1)?.groups.push(group);
  }
  return found;
}

const groupValue = ({ groups }: Entity, code: number) => groups.find(([c]) => c === code)?.[1];

interface Loop {
  readonly layer: string | undefined;
  readonly closed: boolean;
  readonly points: readonly (readonly [number, number])[];
}

function loopsOf(entities: readonly Entity[]): Loop[] {
  const loops: { layer: string | undefined; closed: boolean; points: [number, number][] }[] = [];
  let open = false;
  for (const entity of entities) {
    if (entity.type === "POLYLINE") {
      expect(open).toBe(false);
      expect(groupValue(entity, 66)).toBe("1");
      loops.push({
        layer: groupValue(entity, 8),
        closed: (Number(groupValue(entity, 70)) & 1) === 1,
        points: [],
      });
      open = true;
    } else if (entity.type === "VERTEX") {
      expect(open).toBe(true);
      expect(groupValue(entity, 8)).toBe(loops.at(-1)!.layer);
      loops.at(-1)!.points.push([Number(groupValue(entity, 10)), Number(groupValue(entity, 20))]);
    } else if (entity.type === "SEQEND") open = false;
    else expect(open).toBe(false);
  }
  expect(open).toBe(false);
  return loops;
}

function areaOf(points: Loop["points"]): number {
  return points.reduce((sum, [u, v], i) => {
    const [nextU, nextV] = points[(i + 1) % points.length]!;
    return sum + 0.5 * (u * nextV - nextU * v);
  }, 0);
}

describe.each([
  ["mm", 1, "4"],
  ["in", 25.4, "1"],
] as const)("DXF in %s", (units, perUnit, insertUnits) => {
  const text = dxfText(drawingCase(units));
  const groups = groupsOf(text);
  const loops = loopsOf(entitiesOf(groups, "ENTITIES"));

  it("is release 12 text in ASCII, from HEADER to EOF, and says its unit", () => {
    expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(groups.find((_, i) => groups[i - 1]?.[1] === "$ACADVER")).toEqual([1, "AC1009"]);
    expect(groups.find((_, i) => groups[i - 1]?.[1] === "$INSUNITS")).toEqual([70, insertUnits]);
    expect(groups.at(-1)).toEqual([0, "EOF"]);
    const opened = groups.filter(([code, value]) => code === 0 && value === "SECTION").length;
    expect(groups.filter(([code, value]) => code === 0 && value === "ENDSEC")).toHaveLength(opened);
    expect(opened).toBe(3);
  });

  it("has every closed outline as a closed polyline of the same area, 1:1 in its unit, holes turned the other way", () => {
    const closed = loops.filter((loop) => loop.closed);
    expect(closed.map(({ points }) => areaOf(points) * perUnit ** 2)).toEqual([
      expect.closeTo(254 ** 2, 2),
      expect.closeTo(-(127 ** 2), 2),
      expect.closeTo(25.4 ** 2, 2),
    ]);
    // No point is repeated at the end: closing is the flag's work.
    for (const { points } of closed) expect(points[0]).not.toEqual(points.at(-1));
    expect(closed[0]!.points[0]).toEqual([
      expect.closeTo(100 / perUnit, 6),
      expect.closeTo(200 / perUnit, 6),
    ]);
  });

  it("has open outlines as open polylines, and a single straight piece as a LINE", () => {
    const open = loops.filter((loop) => !loop.closed);
    expect(open).toHaveLength(1);
    expect(open[0]!.points).toHaveLength(3);
    const lines = entitiesOf(groups, "ENTITIES").filter(({ type }) => type === "LINE");
    expect(
      lines.map((line) => [10, 20, 11, 21].map((code) => Number(groupValue(line, code)) * perUnit)),
    ).toEqual([[-10, 5, 90, 5].map((value) => expect.closeTo(value, 4))]);
  });

  it("has a layer of its own for each figure, told apart, each declared with a declared line type", () => {
    const tables = entitiesOf(groups, "TABLES");
    const layers = tables.filter(({ type }) => type === "LAYER");
    const names = layers.map((layer) => groupValue(layer, 2));
    expect(names).toEqual([
      "ENVELOPE_LEFT",
      "PART_FENDER_LIP",
      "PART_FENDER_LIP_2",
      "RING_TIRE_AND_RIM",
      "NOTES",
    ]);
    const types = tables.filter(({ type }) => type === "LTYPE");
    const typeNames = types.map((type) => groupValue(type, 2));
    for (const layer of layers) expect(typeNames).toContain(groupValue(layer, 6));
    expect(new Set(layers.slice(0, 4).map((layer) => groupValue(layer, 6))).size).toBe(3);
    for (const entity of entitiesOf(groups, "ENTITIES")) expect(names).toContain(groupValue(entity, 8));
    // A line type's length is that of its dashes and gaps, and it has as many as it says.
    for (const type of types) {
      const dashes = type.groups.filter(([code]) => code === 49).map(([, value]) => Math.abs(Number(value)));
      expect(dashes).toHaveLength(Number(groupValue(type, 73)));
      expect(dashes.reduce((a, b) => a + b, 0)).toBeCloseTo(Number(groupValue(type, 40)), 4);
    }
  });

  it("carries its title and cautions, what is not ASCII spelled out", () => {
    const notes = entitiesOf(groups, "ENTITIES").filter(({ type }) => type === "TEXT");
    expect(notes.map((note) => groupValue(note, 1))).toEqual([
      'Truck <"A&B"> 5 5/8\\U+2033',
      "Section at X = 0",
      "Measure twice, cut once.",
      "No statement of safety.",
    ]);
  });
});

it("layer names keep to 31 characters of the format and stay apart", () => {
  const [figure] = drawingCase("mm").figures;
  const long = "a very long name of a part that goes on, ";
  const figures = [`${long}one`, `${long}two`, "notes", "ébène", "///"].map((name) => ({
    ...figure!,
    kind: "part" as const,
    name,
  }));
  const groups = groupsOf(dxfText({ ...drawingCase("mm"), figures }));
  const names = entitiesOf(groups, "TABLES")
    .filter(({ type }) => type === "LAYER")
    .map((layer) => groupValue(layer, 2) ?? "");
  expect(new Set(names).size).toBe(6);
  for (const name of names) expect(name).toMatch(/^[A-Z0-9_]{1,31}$/);
});
