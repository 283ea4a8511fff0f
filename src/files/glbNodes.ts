import { type Loose, listAt, numberAt, numbersAt, objectAt } from "./glbDocument.ts";
import { MeshFault } from "./meshBuilder.ts";

/** A mesh where a node of the scene puts it. */
export interface PlacedMesh {
  readonly mesh: Loose;
  /** From the mesh to the scene, by columns. */
  readonly matrix: readonly number[];
  /** Of the mesh, to be told. */
  readonly name: string;
}

const IDENTITY = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1] as const;

/** Every mesh of the file's scene; of all nodes that have no parent when the file names no scene. @throws MeshFault */
export function placedNodes(json: Loose): readonly PlacedMesh[] {
  const nodes = listAt(json, "nodes", "JSON chunk");
  const meshes = listAt(json, "meshes", "JSON chunk");
  const placed: PlacedMesh[] = [];
  const seen = new Uint8Array(nodes.length);
  const waiting = rootsOf(json, nodes).map((index) => ({ index, parent: IDENTITY as readonly number[] }));
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const name = `node ${next.index}`;
    const node = objectAt(nodes[next.index], name);
    if (seen[next.index]) throw new MeshFault(name, "is in the scene more than once; export it again");
    seen[next.index] = 1;
    const matrix = product(next.parent, matrixOf(node, name));
    const index = numberAt(node, "mesh", name);
    if (index !== null) {
      const meshName = `mesh ${index}`;
      const mesh = objectAt(meshes[index], meshName);
      refuseMoved(node, name);
      refuseMorphed(mesh, meshName);
      placed.push({ mesh, matrix, name: meshName });
    }
    for (const child of childrenOf(node, name)) waiting.push({ index: child, parent: matrix });
  }
  return placed;
}

function rootsOf(json: Loose, nodes: readonly unknown[]): readonly number[] {
  const scenes = listAt(json, "scenes", "JSON chunk");
  if (scenes.length > 0) {
    const index = numberAt(json, "scene", "JSON chunk") ?? 0;
    const scene = objectAt(scenes[index], `scene ${index}`);
    return numbersOf(listAt(scene, "nodes", `scene ${index}`), `scene ${index}`);
  }
  const isChild = new Set(nodes.flatMap((node, i) => childrenOf(objectAt(node, `node ${i}`), `node ${i}`)));
  return nodes.flatMap((_, i) => (isChild.has(i) ? [] : [i]));
}

function childrenOf(node: Loose, name: string): readonly number[] {
  return numbersOf(listAt(node, "children", name), name);
}

function numbersOf(list: readonly unknown[], where: string): readonly number[] {
  return list.map((_, i) => numberAt(list as unknown as Loose, String(i), where) ?? Number.NaN);
}

/** What moves the vertices besides the nodes' transforms. */
function refuseMoved(node: Loose, name: string): void {
  if (node.skin !== undefined) throw new MeshFault(name, "has a skin; apply its pose and export it again");
  const extensions = node.extensions === undefined ? {} : objectAt(node.extensions, name);
  if ("EXT_mesh_gpu_instancing" in extensions)
    throw new MeshFault(name, "has instances; make them real meshes and export it again");
  refuseMorphed(node, name);
}

function refuseMorphed({ weights }: Loose, name: string): void {
  if (weights === undefined || (Array.isArray(weights) && weights.every((weight) => weight === 0))) return;
  throw new MeshFault(name, "has a morph turned on; apply it and export it again");
}

/** By columns: the node's own matrix, or translation · rotation · scale. */
function matrixOf(node: Loose, name: string): readonly number[] {
  const matrix = numbersAt(node, "matrix", 16, name);
  if (matrix) return matrix;
  const [tx, ty, tz] = numbersAt(node, "translation", 3, name) ?? [0, 0, 0];
  const [x, y, z, w] = (numbersAt(node, "rotation", 4, name) ?? [0, 0, 0, 1]) as [
    number,
    number,
    number,
    number,
  ];
  const [sx, sy, sz] = (numbersAt(node, "scale", 3, name) ?? [1, 1, 1]) as [number, number, number];
  // Rotation of a unit quaternion.
  return [
    (1 - 2 * (y * y + z * z)) * sx,
    2 * (x * y + z * w) * sx,
    2 * (x * z - y * w) * sx,
    0,
    2 * (x * y - z * w) * sy,
    (1 - 2 * (x * x + z * z)) * sy,
    2 * (y * z + x * w) * sy,
    0,
    2 * (x * z + y * w) * sz,
    2 * (y * z - x * w) * sz,
    (1 - 2 * (x * x + y * y)) * sz,
    0,
    tx!,
    ty!,
    tz!,
    1,
  ];
}

/** a · b, by columns. */
function product(a: readonly number[], b: readonly number[]): readonly number[] {
  return Array.from({ length: 16 }, (_, i) => {
    const [row, column] = [i % 4, i - (i % 4)];
    let sum = 0;
    for (let k = 0; k < 4; k++) sum += a[4 * k + row]! * b[column + k]!;
    return sum;
  });
}
