/** Largest whole number a lattice place may have. */
export const LATTICE_MOST = 4095;

const FREE = -1;

/** Values at points of a lattice, by three whole numbers from 0 to `LATTICE_MOST`: an open hash on typed arrays. */
export class LatticeValues {
  /** Two numbers a slot: i and j packed, k. */
  private keys = new Int32Array(2 << 16).fill(FREE);
  private values = new Float32Array(1 << 16);
  private used = 0;

  /** The value there, or NaN. */
  get(i: number, j: number, k: number): number {
    const slot = this.slotOf((i << 12) | j, k);
    return this.keys[2 * slot] === FREE ? Number.NaN : this.values[slot]!;
  }

  set(i: number, j: number, k: number, value: number): void {
    if (2 * this.used >= this.values.length) this.grow();
    const high = (i << 12) | j;
    const slot = this.slotOf(high, k);
    if (this.keys[2 * slot] === FREE) this.used++;
    this.keys[2 * slot] = high;
    this.keys[2 * slot + 1] = k;
    this.values[slot] = value;
  }

  private slotOf(high: number, low: number): number {
    const mask = this.values.length - 1;
    // Multiplicative hashing with odd constants: 2^32 over the golden ratio, and another of mixed bits.
    let slot = ((Math.imul(high, 0x9e3779b1) ^ Math.imul(low, 0x85ebca77)) >>> 7) & mask;
    while (
      this.keys[2 * slot] !== FREE &&
      (this.keys[2 * slot] !== high || this.keys[2 * slot + 1] !== low)
    ) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private grow(): void {
    const { keys, values } = this;
    this.keys = new Int32Array(2 * keys.length).fill(FREE);
    this.values = new Float32Array(2 * values.length);
    for (let i = 0; i < values.length; i++) {
      if (keys[2 * i] === FREE) continue;
      const slot = this.slotOf(keys[2 * i]!, keys[2 * i + 1]!);
      this.keys[2 * slot] = keys[2 * i]!;
      this.keys[2 * slot + 1] = keys[2 * i + 1]!;
      this.values[slot] = values[i]!;
    }
  }
}
