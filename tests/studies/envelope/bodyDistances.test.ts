import { expect, test } from "vitest";
import { bodyDistances } from "../../../src/studies/envelope/bodyDistances.ts";
import { assembledModel, demoSetup } from "../../reference/demoModel.ts";
import { flatMesh } from "../../reference/flatMesh.ts";
import { surfaceQuery } from "../../reference/mesh/surfaceQuery.ts";

const setup = demoSetup();

function withBody(body: (typeof setup)["truck"]["body"]) {
  return assembledModel({ ...setup, truck: { ...setup.truck, body } });
}

function points(...places: readonly (readonly [number, number, number])[]) {
  return { positions: Float64Array.from(places.flat()), triangles: new Uint32Array() };
}

test("distances to a box: outside, on an edge's far side, inside with the depth below zero", () => {
  const model = withBody([
    { name: "rail", side: "both", kind: "box", min: [0, 100, 0], max: [100, 200, 50] },
  ]);
  const mesh = points([50, 230, 25], [50, 203, 54], [50, 150, 10]);
  expect([...bodyDistances(model, "left", mesh)]).toEqual([30, 5, -10]);
});

test("distances to a path keep its radius, and a right side is the mirror image", () => {
  const model = withBody([
    {
      name: "lip",
      side: "both",
      kind: "path",
      radius: 3,
      points: [
        [0, 500, 0],
        [100, 500, 0],
      ],
    },
  ]);
  expect([...bodyDistances(model, "left", points([50, 500, 10], [103, 504, 0]))]).toEqual([7, 2]);
  expect([...bodyDistances(model, "right", points([50, -500, 10], [50, 500, 0]))]).toEqual([7, 997]);
});

test("without a part on the side nothing is near", () => {
  expect([...bodyDistances(withBody([]), "left", points([1, 2, 3]))]).toEqual([Number.POSITIVE_INFINITY]);
});

test("distances to a mesh of hundreds of triangles agree with three-mesh-bvh", () => {
  const side = 17;
  const vertices: [number, number, number][] = [];
  const triangles: [number, number, number][] = [];
  for (let i = 0; i <= side; i++) {
    for (let j = 0; j <= side; j++) {
      vertices.push([20 * i, 600 + 40 * Math.sin(i) * Math.cos(0.7 * j), 20 * j]);
      if (i === side || j === side) continue;
      const a = i * (side + 1) + j;
      triangles.push([a, a + 1, a + side + 1], [a + 1, a + side + 2, a + side + 1]);
    }
  }
  const sheet = flatMesh(vertices, triangles);
  const model = withBody([{ name: "sheet", side: "both", kind: "mesh", ...sheet }]);
  expect(model.parts[0]!.shape.tree).toBeDefined();
  const places = Array.from({ length: 200 }, (_, k): [number, number, number] => [
    -50 + ((37 * k) % 440),
    500 + ((53 * k) % 200),
    -40 + ((71 * k) % 430),
  ]);
  const { distance } = surfaceQuery(sheet);
  const found = bodyDistances(model, "left", points(...places));
  places.forEach((place, i) => {
    expect(Math.abs(found[i]! - distance(place))).toBeLessThan(1e-3);
  });
});
