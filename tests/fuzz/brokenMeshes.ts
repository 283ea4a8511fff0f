/** A mesh file by name and bytes. */
export interface BrokenMesh {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const text = (name: string, content: string): BrokenMesh => ({
  name,
  bytes: new TextEncoder().encode(content),
});
const filled = (unit: string, bytes: number) => unit.repeat(Math.ceil(bytes / unit.length));

/** Vertices and the one face of them, which counts back, so that it can stand any number of times. */
function face(count: number, corner: (i: number) => readonly [number, number]): string {
  const corners = Array.from({ length: count }, (_, i) => corner(i).map((x) => x.toFixed(4)));
  const vertices = corners.map(([x, y]) => `v ${x} ${y} 0\n`).join("");
  return `${vertices}f ${corners.map((_, i) => i - count).join(" ")}\n`;
}

const round = (radius: number, angle: number) =>
  [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
const star = face(1000, (i) => round(i % 2 === 0 ? 1 : 0.3, (i / 1000) * 2 * Math.PI));
const spiral = face(1000, (i) => {
  const along = i < 500 ? i : 1000 - i;
  return round((i < 500 ? 1 : 0.98) * (1 + along / 100), along / 10);
});
const tangle = face(900, (i) => [(i * 7919) % 97, (i * 104729) % 89]);

function glb(json: string): BrokenMesh {
  const content = new TextEncoder().encode(json);
  const size = Math.ceil(content.length / 4) * 4;
  const bytes = new Uint8Array(20 + size).fill(0x20);
  const view = new DataView(bytes.buffer);
  for (const [i, word] of [0x46546c67, 2, bytes.length, size, 0x4e4f534a].entries())
    view.setUint32(4 * i, word, true);
  bytes.set(content, 20);
  return { name: "a.glb", bytes };
}

const scene = (nodes: number[], rest: object) =>
  glb(JSON.stringify({ asset: { version: "2.0" }, scenes: [{ nodes }], ...rest }));
const numbers = (count: number) => Array.from({ length: Math.floor(count) }, (_, i) => i);

const PLY_START =
  "ply\nformat ascii 1.0\nelement vertex 3\nproperty float x\nproperty float y\nproperty float z\n";

/** Files of about so many bytes that are no mesh, or one that asks for far too much. */
export const brokenMeshes: Readonly<Record<string, (bytes: number) => BrokenMesh>> = {
  "OBJ of stars": (bytes) => text("a.obj", filled(star, bytes)),
  "OBJ of spirals": (bytes) => text("a.obj", filled(spiral, bytes)),
  "OBJ of tangles": (bytes) => text("a.obj", filled(tangle, bytes)),
  "OBJ of one face": (bytes) => text("a.obj", `v 0 1 2\nf ${filled("1 ", bytes)}`),
  "OBJ of vertices": (bytes) => text("a.obj", filled("v 0 1 2\n", bytes)),
  "OBJ of one line": (bytes) => text("a.obj", filled("v 0 0 0 \\\n", bytes)),
  "OBJ of one triangle": (bytes) => text("a.obj", `v 0 0 0\nv 1 0 0\nv 0 1 0\n${filled("f 1 2 3\n", bytes)}`),
  "OBJ of one word": (bytes) => text("a.obj", `v${filled("x", bytes)}`),
  "OBJ of spaces": (bytes) => text("a.obj", filled(" ", bytes)),
  "PLY of too many faces": (bytes) =>
    text(
      "a.ply",
      `${PLY_START}element face ${Math.floor(bytes / 10)}\nproperty list uchar int vertex_indices\nend_header\n0 0 0\n1 0 0\n0 1 0\n${filled("3 0 1 2\n", bytes)}`,
    ),
  "PLY of header": (bytes) => text("a.ply", `ply\nformat ascii 1.0\n${filled("comment a\n", bytes)}`),
  "PLY of elements": (bytes) => text("a.ply", `ply\nformat ascii 1.0\n${filled("element a 1\n", bytes)}`),
  "PLY of properties": (bytes) => text("a.ply", PLY_START + filled("property float w\n", bytes)),
  "STL of facets without an end": (bytes) =>
    text(
      "a.stl",
      `solid a\n${filled("facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\n", bytes)}`,
    ),
  "STL of one word": (bytes) => text("a.stl", `solid ${filled("x", bytes)}`),
  "STL of points": (bytes) => {
    const count = Math.floor(bytes / 50);
    const content = new Uint8Array(84 + 50 * count);
    new DataView(content.buffer).setUint32(80, count, true);
    return { name: "a.stl", bytes: content };
  },
  "GLB of nodes": (bytes) => scene([0], { nodes: numbers(bytes / 3).map(() => ({})) }),
  "GLB of one chain": (bytes) =>
    scene([0], { nodes: numbers(bytes / 22).map((i) => ({ children: [i + 1] })) }),
  "GLB of one mesh many times": (bytes) =>
    scene(numbers(3000), {
      nodes: numbers(3000).map(() => ({ mesh: 0 })),
      meshes: [{ primitives: numbers(bytes / 28).map(() => ({ mode: 0, attributes: {} })) }],
    }),
  "GLB of brackets": (bytes) => glb(filled("[", bytes)),
  "GLB of chunks": (bytes) => {
    const content = new Uint8Array(12 + 8 * Math.floor(bytes / 8));
    const view = new DataView(content.buffer);
    for (const [i, word] of [0x46546c67, 2, content.length].entries()) view.setUint32(4 * i, word, true);
    for (let at = 12; at < content.length; at += 8) view.setUint32(at + 4, 1, true);
    return { name: "a.glb", bytes: content };
  },
};
