import type { LoadedMesh } from "../setup/reading/blockReading.ts";
import { MAX_TRIANGLES } from "../setup/reading/limits.ts";

/** What keeps a file from being a mesh. Thrown by the readers of this room and caught in `readMesh`: it never leaves. */
export class MeshFault extends Error {
  override readonly name = "MeshFault";

  /**
   * @param where in the file: `line 12`, `triangle 7`; "" = the file as a whole
   * @param mend what is wrong and what would be right, without a full stop
   */
  constructor(where: string, mend: string) {
    super(where === "" ? mend : `${where}: ${mend}`);
  }
}

/** A mesh read from a file, and how many of its triangles had no area and were left out. */
export interface FileMesh extends LoadedMesh {
  readonly dropped: number;
}

/** A place of the hash table where no vertex is. */
const FREE = -1;

/**
 * Gathers triangles as they are read. Vertices with the very same coordinates become one (an STL repeats each
 * about six times); triangles without area and vertices without triangles are left out. Grows with what is
 * really read, never with what a header promises.
 */
export class MeshBuilder {
  #positions = new Float64Array(3 * 1024);
  #vertexCount = 0;
  #triangles = new Uint32Array(3 * 1024);
  #triangleCount = 0;
  #dropped = 0;
  /** Vertex numbers by the hash of their coordinates, open addressing; a power of 2, at most half full. */
  #table = new Int32Array(4096).fill(FREE);

  /** The number of the vertex there, new or known. Coordinates must be finite: readers check, they know the place. */
  vertex(x: number, y: number, z: number): number {
    // −0 and 0 are the same place.
    const px = x + 0;
    const py = y + 0;
    const pz = z + 0;
    const mask = this.#table.length - 1;
    let slot = hashOf(px, py, pz) & mask;
    for (let known = this.#table[slot]!; known !== FREE; known = this.#table[slot]!) {
      const at = 3 * known;
      const positions = this.#positions;
      if (positions[at] === px && positions[at + 1] === py && positions[at + 2] === pz) return known;
      slot = (slot + 1) & mask;
    }
    const number = this.#vertexCount++;
    if (3 * number + 3 > this.#positions.length) this.#positions = grown(this.#positions, Float64Array);
    this.#positions[3 * number] = px;
    this.#positions[3 * number + 1] = py;
    this.#positions[3 * number + 2] = pz;
    this.#table[slot] = number;
    if (2 * this.#vertexCount > this.#table.length) this.#rehash();
    return number;
  }

  /** Adds a triangle by its vertices' numbers. @param where it is in the file @throws MeshFault past the limit */
  triangle(a: number, b: number, c: number, where: () => string): void {
    if (this.#triangleCount + this.#dropped >= MAX_TRIANGLES) {
      const mend = `holds more than ${MAX_TRIANGLES} triangles; reduce it, or cut away what no wheel comes near`;
      throw new MeshFault(where(), mend);
    }
    if (this.#hasNoArea(a, b, c)) {
      this.#dropped++;
      return;
    }
    const at = 3 * this.#triangleCount++;
    if (at + 3 > this.#triangles.length) this.#triangles = grown(this.#triangles, Uint32Array);
    this.#triangles[at] = a;
    this.#triangles[at + 1] = b;
    this.#triangles[at + 2] = c;
  }

  /** The mesh of all that was added. @throws MeshFault when there is none */
  mesh(unit: LoadedMesh["unit"]): FileMesh {
    if (this.#triangleCount === 0) {
      const all = this.#dropped > 0 ? `all ${this.#dropped} triangles have no area` : "holds no triangles";
      throw new MeshFault("", `${all}; export the surface itself, as triangles`);
    }
    const triangles = this.#triangles.slice(0, 3 * this.#triangleCount);
    return { positions: this.#compacted(triangles), triangles, unit, dropped: this.#dropped };
  }

  /** The vertices that triangles use, renumbered in the order of use. Changes `triangles`. */
  #compacted(triangles: Uint32Array): Float64Array {
    const numbers = new Int32Array(this.#vertexCount).fill(FREE);
    const positions = new Float64Array(3 * this.#vertexCount);
    let count = 0;
    for (let i = 0; i < triangles.length; i++) {
      const old = triangles[i]!;
      if (numbers[old] === FREE) {
        numbers[old] = count;
        for (let axis = 0; axis < 3; axis++) positions[3 * count + axis] = this.#positions[3 * old + axis]!;
        count++;
      }
      triangles[i] = numbers[old]!;
    }
    return positions.slice(0, 3 * count);
  }

  #hasNoArea(a: number, b: number, c: number): boolean {
    if (a === b || b === c || c === a) return true;
    const p = this.#positions;
    const ux = p[3 * b]! - p[3 * a]!;
    const uy = p[3 * b + 1]! - p[3 * a + 1]!;
    const uz = p[3 * b + 2]! - p[3 * a + 2]!;
    const vx = p[3 * c]! - p[3 * a]!;
    const vy = p[3 * c + 1]! - p[3 * a + 1]!;
    const vz = p[3 * c + 2]! - p[3 * a + 2]!;
    return uy * vz === uz * vy && uz * vx === ux * vz && ux * vy === uy * vx;
  }

  #rehash(): void {
    const table = new Int32Array(2 * this.#table.length).fill(FREE);
    const mask = table.length - 1;
    const p = this.#positions;
    for (let number = 0; number < this.#vertexCount; number++) {
      let slot = hashOf(p[3 * number]!, p[3 * number + 1]!, p[3 * number + 2]!) & mask;
      while (table[slot] !== FREE) slot = (slot + 1) & mask;
      table[slot] = number;
    }
    this.#table = table;
  }
}

const hashed = new Float64Array(3);
const hashedWords = new Int32Array(hashed.buffer);

/** Mixes the bits of three coordinates (constants of the 32-bit MurmurHash3 by Austin Appleby, from memory). */
function hashOf(x: number, y: number, z: number): number {
  hashed[0] = x;
  hashed[1] = y;
  hashed[2] = z;
  let h = 0;
  for (let i = 0; i < 6; i++) {
    let k = Math.imul(hashedWords[i]!, 0xcc9e2d51);
    k = (k << 15) | (k >>> 17);
    h ^= Math.imul(k, 0x1b873593);
    h = (h << 13) | (h >>> 19);
    h = (Math.imul(h, 5) + 0xe6546b64) | 0;
  }
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  return h ^ (h >>> 13);
}

function grown<Row extends Float64Array | Uint32Array>(row: Row, Kind: new (length: number) => Row): Row {
  const larger = new Kind(2 * row.length);
  larger.set(row);
  return larger;
}

/** A list of points that grows as it is read, 24 bytes each. */
export class Coordinates {
  #values = new Float64Array(3 * 1024);
  #count = 0;

  get count(): number {
    return this.#count;
  }

  add(x: number, y: number, z: number): void {
    const at = 3 * this.#count++;
    if (at + 3 > this.#values.length) {
      const larger = new Float64Array(2 * this.#values.length);
      larger.set(this.#values);
      this.#values = larger;
    }
    this.#values[at] = x;
    this.#values[at + 1] = y;
    this.#values[at + 2] = z;
  }

  /** One coordinate of a point that was added. */
  at(point: number, axis: 0 | 1 | 2): number {
    return this.#values[3 * point + axis]!;
  }
}
