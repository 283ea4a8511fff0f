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
