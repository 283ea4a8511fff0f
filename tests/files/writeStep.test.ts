import occtImport from "occt-import-js";
import { describe, expect, it } from "vitest";
import { stepText } from "../../src/files/writeStep.ts";
import type { NamedMesh } from "../../src/geometry/drawnFile.ts";
import { knuckleSolid } from "../../src/studies/knuckleSolid/knuckleSolid.ts";
import { meshVolume } from "../../src/studies/section/outline.ts";
import { BUILD, KNUCKLE } from "../studies/knuckleSolid/buildCase.ts";
import { cornersVolume, crookedRing } from "./meshCases.ts";

const ring: NamedMesh = { name: "d'Angelo's ring, Ø", mesh: crookedRing() };
/** A corner of a box, far from the origin. */
const corner: NamedMesh = {
  name: "corner",
  mesh: {
    positions: Float64Array.of(900, 0, 0, 912, 0, 0, 900, 24, 0, 900, 0, 36),
    triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
  },
};

/** Entities by number, each as it stands; every number that one names must be of another. */
function entitiesOf(text: string): ReadonlyMap<number, string> {
  const [head, data] = text.split("\nDATA;\n");
  expect(head).toMatch(/^ISO-10303-21;\n\/\*[^*]*\*\/\nHEADER;\n/);
  expect(data).toMatch(/\nENDSEC;\nEND-ISO-10303-21;\n$/);
  const lines = data!.slice(0, data!.indexOf("\nENDSEC;")).split("\n");
  const known = new Map(
    lines.map((line) => {
      const [, number, entity] = /^#(\d+)=([ -~]+);$/.exec(line)!;
      return [Number(number), entity!] as const;
    }),
  );
  expect(known.size).toBe(lines.length);
  for (const entity of known.values())
    for (const [, number] of entity.replaceAll(/'[^']*'/g, "").matchAll(/#(\d+)/g))
      expect(known.has(Number(number)), entity).toBe(true);
  return known;
}

const numbersOf = (entity: string) => [...entity.matchAll(/#(\d+)/g)].map(([, number]) => Number(number));

describe("a STEP file", () => {
  it("is read by a modeling kernel as solids of the same flat faces, volume and place, in mm", async () => {
    const occt = await occtImport();
    const bytes = new TextEncoder().encode(stepText([ring, corner], "Ring, 6 mm"));
    const { success, meshes } = occt.ReadStepFile(bytes, { linearUnit: "millimeter" });
    expect(success).toBe(true);
    expect(meshes).toHaveLength(2);
    for (const [i, { mesh }] of [ring, corner].entries()) {
      const { attributes, index, brep_faces } = meshes[i]!;
      expect(brep_faces).toHaveLength(mesh.triangles.length / 3);
      const corners = index.array.flatMap((at) => attributes.position.array.slice(3 * at, 3 * at + 3));
      expect(cornersVolume(corners) / meshVolume(mesh)).toBeCloseTo(1, 5);
    }
    const [x] = [meshes[1]!.attributes.position.array.filter((_, i) => i % 3 === 0)];
    expect([Math.min(...x), Math.max(...x)]).toEqual([900, 912]);
  });

  it("has a name with an apostrophe or a backslash, which begins a code there, both doubled", () => {
    const text = stepText([{ ...corner, name: "post \\S\\ d'en bas" }], "x");
    expect(text).toContain("FACETED_BREP('post \\\\S\\\\ d''en bas',");
    const quoted = stepText([{ ...corner, name: "Ray’s “post”" }], "variant “deep”");
    expect(quoted).toContain(`FACETED_BREP('Ray''s "post"',`);
    expect(quoted).toContain('variant "deep"');
  });

  it("of a knuckle has closed shells of outward faces, and their volume is that of the bodies", () => {
    const bodies = knuckleSolid(BUILD, KNUCKLE);
    const known = entitiesOf(stepText(bodies, "Knuckle"));
    const all = [...known.values()];
    const shells = all.filter((entity) => entity.startsWith("CLOSED_SHELL"));
    expect(shells).toHaveLength(bodies.length);
    expect(all.filter((entity) => entity.startsWith("FACETED_BREP('"))).toHaveLength(bodies.length);
    for (const [i, shell] of shells.entries()) {
      const edges = new Map<string, number>();
      const corners: number[] = [];
      for (const face of numbersOf(shell)) {
        const [bound, plane] = numbersOf(known.get(face)!);
        const loop = numbersOf(known.get(numbersOf(known.get(bound!)!)[0]!)!);
        const at = loop.map((point) => /\(([^()]*)\)\)$/.exec(known.get(point)!)![1]!.split(",").map(Number));
        corners.push(...at.flat());
        // The plane goes through the face, its normal square to the edges.
        const [axes] = numbersOf(known.get(plane!)!);
        const [, up] = numbersOf(known.get(axes!)!);
        const normal = /\(([^()]*)\)\)$/.exec(known.get(up!)!)![1]!.split(",").map(Number);
        for (const to of [at[1]!, at[2]!]) {
          const way = to.map((value, axis) => value - at[0]![axis]!);
          const off = way.reduce((sum, value, axis) => sum + value * normal[axis]!, 0);
          expect(Math.abs(off)).toBeLessThan(1e-3);
        }
        loop.forEach((from, k) => {
          const key = `${from} ${loop[(k + 1) % loop.length]}`;
          edges.set(key, (edges.get(key) ?? 0) + 1);
        });
      }
      // Each edge is gone along once either way.
      const unmatched = [...edges].filter(([key, times]) => {
        const [from, to] = key.split(" ");
        return times !== 1 || edges.get(`${to} ${from}`) !== 1;
      });
      expect(unmatched).toEqual([]);
      expect(cornersVolume(corners) / meshVolume(bodies[i]!.mesh)).toBeCloseTo(1, 6);
    }
  });

  it("is refused for a corner that is nowhere", () => {
    const mesh = {
      ...corner.mesh,
      positions: corner.mesh.positions.map((n, i) => (i === 4 ? Number.NaN : n)),
    };
    expect(() => stepText([{ name: "", mesh }], "")).toThrow(RangeError);
  });
});
