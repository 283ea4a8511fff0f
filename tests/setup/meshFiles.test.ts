import fc from "fast-check";
import { Matrix4, Vector3 } from "three";
import { describe, expect, it } from "vitest";
import type { LoadedMesh, LoadedMeshes } from "../../src/setup/reading/blockReading.ts";
import { formatIssue } from "../../src/setup/reading/issueList.ts";
import { resolveSetup } from "../../src/setup/resolveSetup.ts";
import type { Point } from "../../src/setup/types/truckTypes.ts";
import { flatMesh } from "../reference/flatMesh.ts";
import { exampleDocument } from "./fixtures.ts";

const CORNERS: readonly Point[] = [
  [1, 2, 3],
  [4, 0, 0],
  [0, 5, 0],
];
const TRIANGLE: LoadedMesh = { ...flatMesh(CORNERS, [[0, 1, 2]]), unit: null };

function resolvedWith(part: object, mesh: LoadedMesh = TRIANGLE) {
  return resolvedFrom(part, new Map([["arch.stl", mesh]]));
}

function resolvedFrom(part: object, meshes: LoadedMeshes) {
  const document = exampleDocument();
  document.truck.body = [{ name: "arch", kind: "mesh", file: "arch.stl", ...part }];
  return resolveSetup(document, "truck.json", null, meshes);
}

function vertices(part: object, mesh: LoadedMesh = TRIANGLE): readonly Point[] {
  const setup = resolvedWith(part, mesh);
  if (!setup.ok) throw new Error(setup.issues.map(formatIssue).join("\n"));
  const placed = setup.value.truck.body[0];
  if (placed?.kind !== "mesh") throw new Error("no mesh");
  const { positions } = placed;
  return Array.from({ length: positions.length / 3 }, (_, i): Point => {
    return [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  });
}

/** The mend of the only issue there is. */
function mendOf(part: object, mesh: LoadedMesh = TRIANGLE): string {
  const setup = resolvedWith(part, mesh);
  if (setup.ok) throw new Error("it was taken");
  expect(setup.issues).toHaveLength(1);
  return setup.issues[0]!.mend;
}

describe("a mesh from a file", () => {
  it("is in the setup's units unless it says otherwise", () => {
    expect(vertices({})[1]).toEqual([expect.closeTo(101.6, 9), 0, 0]);
    expect(vertices({ unit: "mm" })[0]).toEqual([1, 2, 3]);
    expect(vertices({ unit: "cm" })[0]).toEqual([10, 20, 30]);
    expect(vertices({ unit: "m" })[0]).toEqual([1000, 2000, 3000]);
  });

  it("is in the unit its format fixes, where it fixes one, unless the setup says otherwise", () => {
    const inMeters: LoadedMesh = { ...TRIANGLE, unit: "m" };
    expect(vertices({}, inMeters)[0]).toEqual([1000, 2000, 3000]);
    expect(vertices({ unit: "mm" }, inMeters)[0]).toEqual([1, 2, 3]);
  });

  it("is turned about X, then Y, then Z, right-handed and exact for quarter turns, then moved", () => {
    expect(vertices({ unit: "mm", place: { turn: [90, 0, 0] } })[0]).toEqual([1, -3, 2]);
    expect(vertices({ unit: "mm", place: { turn: [0, 90, 0] } })[0]).toEqual([3, 2, -1]);
    expect(vertices({ unit: "mm", place: { turn: [0, 0, -90] } })[0]).toEqual([2, -1, 3]);
    expect(vertices({ unit: "mm", place: { turn: [90, 0, 90], move: ["1 mm", "10 mm", 0] } })[0]).toEqual([
      4, 11, 2,
    ]);
    const turned = vertices({ unit: "mm", place: { turn: [20, -35, 130] } })[0]!;
    expect(Math.hypot(...turned)).toBeCloseTo(Math.hypot(1, 2, 3), 12);
  });

  it("is scaled before it is moved", () => {
    expect(vertices({ unit: "mm", place: { scale: 2, move: ["1 mm", 0, 0] } })[0]).toEqual([3, 4, 6]);
  });

  it.each<[object, LoadedMesh, string]>([
    [{ vertices: [] }, TRIANGLE, "vertices"],
    [{ unit: "yd" }, TRIANGLE, "unit"],
    [{ place: { turn: [0, 0, "x"] } }, TRIANGLE, "place.turn[2]"],
    [{ place: { shift: [0, 0, 0] } }, TRIANGLE, "place.shift"],
    [{ place: { scale: 0 } }, TRIANGLE, "place.scale"],
    [{ place: { scale: -1 } }, TRIANGLE, "place.scale"],
    [{}, { ...TRIANGLE, triangles: new Uint32Array() }, "file"],
    [{}, { ...TRIANGLE, triangles: Uint32Array.of(0, 1, 3) }, "file"],
    [{}, { ...TRIANGLE, triangles: Uint32Array.of(0, 1, 2, 0) }, "file"],
    [{}, { ...TRIANGLE, positions: Float64Array.of(...TRIANGLE.positions, Number.NaN, 0, 0) }, "file"],
    [{ unit: "m" }, { ...TRIANGLE, positions: Float64Array.of(...TRIANGLE.positions, 101, 0, 0) }, "file"],
  ])("with %j is refused with a mesh of %j at %s", (part, mesh, key) => {
    const setup = resolvedWith(part, mesh);
    expect(setup.ok ? [] : setup.issues.map((issue) => issue.key)).toEqual([`truck.body[0].${key}`]);
    if (!setup.ok) expect(formatIssue(setup.issues[0]!)).not.toMatch(/undefined|\n/);
  });

  it.each(["/etc/arch.stl", "../arch.stl", "scans/../../arch.stl", "C:arch.stl", "..\\arch.stl"])(
    "is not looked for outside the setup's folder: %s",
    (file) => {
      const meshes: LoadedMeshes = {
        get: () => {
          throw new Error("it was asked for");
        },
      };
      const setup = resolvedFrom({ file }, meshes);
      expect(setup.ok ? [] : setup.issues.map(({ mend }) => mend)).toEqual([
        expect.stringMatching(/lies beside the setup or in a folder there/),
      ]);
    },
  );

  it("that could not be read is refused once with the reader's reason, variants or not", () => {
    const setup = resolvedFrom({}, { get: () => ({ refused: "line 3: no number" }) });
    expect(setup.ok ? [] : setup.issues.map(formatIssue)).toEqual([
      'truck.json: truck.body[0].file: "arch.stl": line 3: no number',
    ]);
  });
});

const far = fc.integer({ min: -5000, max: 5000 }).map((tenths) => tenths / 10);
const points = fc.tuple(far, far, far);

/** The least height of a triangle. */
function height([a, b, c]: readonly (readonly number[])[]): number {
  const [p, q, r] = [a, b, c].map((point) => new Vector3(...(point as Point))) as [Vector3, Vector3, Vector3];
  const area = q.clone().sub(p).cross(r.clone().sub(p)).length();
  return area / Math.max(p.distanceTo(q), q.distanceTo(r), r.distanceTo(p));
}

describe("three matched points", () => {
  const MM = { unit: "mm" };
  const from = [
    [0, 0, 0],
    [400, 0, 0],
    [0, 300, 0],
  ];
  const to = (shift: number) => [
    ["100 mm", "200 mm", "300 mm"],
    ["100 mm", `${600 + shift} mm`, "300 mm"],
    ["100 mm", "200 mm", "600 mm"],
  ];

  it("place the mesh: the first at its point, the second in its direction, the third in its plane", () => {
    const [first, second, third] = vertices(
      { ...MM, place: { from, to: to(2) } },
      {
        ...TRIANGLE,
        positions: Float64Array.from(from.flat()),
      },
    );
    expect(first).toEqual([100, 200, 300]);
    // The mesh keeps its size: the tape's 2 mm stay at the far end.
    for (const [at, wanted] of [
      [second, [100, 600, 300]],
      [third, [100, 200, 600]],
    ] as const)
      at!.forEach((value, axis) => {
        expect(value).toBeCloseTo(wanted[axis]!, 9);
      });
  });

  it("agree with the transform three.js makes of the same two frames, for any points", () => {
    fc.assert(
      fc.property(
        fc.tuple(points, points, points).filter((three) => height(three) > 26),
        points,
        fc.tuple(far, far, far, far).filter((q) => Math.hypot(...q) > 1),
        points,
        (three, move, q, probe) => {
          // An arbitrary pose by quaternion, done to the three points; the reader must find it again.
          const norm = Math.hypot(...q);
          const rotation = q.map((value) => value / norm) as [number, number, number, number];
          const pose = new Matrix4().compose(
            new Vector3(...move),
            // biome-ignore lint/suspicious/noExplicitAny: only x, y, z, w are read
            { _x: rotation[0], _y: rotation[1], _z: rotation[2], _w: rotation[3] } as any,
            new Vector3(1, 1, 1),
          );
          const moved = three.map((point) => [...new Vector3(...point).applyMatrix4(pose)]);
          const place = {
            from: three,
            to: moved.map((point) => point.map((value) => `${value.toFixed(9)} mm`)),
          };
          const [placed] = vertices(
            { ...MM, place },
            {
              ...TRIANGLE,
              positions: Float64Array.from([...probe, ...three[0], ...three[1]]),
            },
          );
          const wanted = new Vector3(...probe).applyMatrix4(pose);
          expect(new Vector3(...placed!).distanceTo(wanted)).toBeLessThan(1e-5);
        },
      ),
      { seed: 1955, numRuns: 300 },
    );
  });

  it("may be in a unit of their own", () => {
    const inMeters = from.map((point) => point.map((value) => value / 1000));
    const [, second] = vertices(
      { unit: "m", place: { from: inMeters, to: to(0) } },
      {
        ...TRIANGLE,
        positions: Float64Array.from(inMeters.flat()),
      },
    );
    expect(second![1]).toBeCloseTo(600, 9);
  });

  it("are refused when a side differs by more than a tape can, with both lengths", () => {
    expect(vertices({ ...MM, place: { from, to: to(3) } })).toHaveLength(3);
    expect(mendOf({ ...MM, place: { from, to: to(30) } })).toBe(
      "points 1 and 2 are 15 3/4 in apart in the mesh but 16 15/16 in on the truck; check these points, their order and unit",
    );
  });

  it("name the unit in which they would agree", () => {
    expect(mendOf({ unit: "in", place: { from, to: to(0) } })).toMatch(/; with unit "mm" all sides agree$/);
    // In inches these would be too close to each other to fix a plane.
    const inMeters = from.map((point) => point.map((value) => value / 1000));
    expect(mendOf({ place: { from: inMeters, to: to(0) } })).toMatch(/; with unit "m" all sides agree$/);
  });

  it.each<[string, object, string]>([
    [
      "in line in the mesh",
      {
        from: [
          [0, 0, 0],
          [400, 0, 0],
          [800, 10, 0],
        ],
        to: to(0),
      },
      "place.from",
    ],
    [
      "the same twice",
      {
        from: [
          [0, 0, 0],
          [0, 0, 0],
          [0, 300, 0],
        ],
        to: to(0),
      },
      "place.from",
    ],
    [
      "in line on the truck",
      {
        from,
        to: [
          [0, 0, 0],
          [10, 0, 0],
          [20, 0, 0],
        ],
      },
      "place.to",
    ],
    ["two only", { from: from.slice(1), to: to(0) }, "place.from"],
    ["without the truck's", { from }, "place.to"],
    ["without the mesh's", { to: to(0) }, "place.from"],
    ["with a turn", { from, to: to(0), turn: [0, 0, 90] }, "place.turn"],
    ["with a scale", { from, to: to(0), scale: 2 }, "place.scale"],
    [
      "too far apart",
      {
        from: [
          [0, 0, 0],
          [2e12, 0, 0],
          [0, 2e12, 0],
        ],
        to: to(0),
      },
      "place.to",
    ],
    [
      "at no distance that can be reckoned with",
      {
        from: [
          [0, 0, 0],
          [1e300, 0, 0],
          [0, 1e300, 0],
        ],
        to: to(0),
      },
      "place.from",
    ],
  ])("are refused %s", (_, place, key) => {
    const setup = resolvedWith({ ...MM, place });
    expect(setup.ok ? [] : setup.issues.map((issue) => issue.key)).toEqual([`truck.body[0].${key}`]);
  });
});
