/** Whole numbers below others, the same from the same seed on every machine (a Weyl sequence through a mixing hash). */
function wholeNumbers(seed: number): (below: number) => number {
  let state = seed | 0;
  return (below) => {
    state = (state + 0x9e3779b9) | 0;
    let h = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    h ^= h >>> 16;
    // The part of 2³² is exact, and off by less than 1 in a million for numbers this small.
    return Math.floor(((h >>> 0) / 2 ** 32) * below);
  };
}

/** Digits of each number: at least this many points are told apart in each dimension. */
const MOST_POINTS = 2 ** 32;

/**
 * Points that fill the unit cube more evenly than random ones: Halton's sequence, each dimension in its own prime, every digit
 * place with a permutation of its own drawn from the seed, so that each point is uniform and many dimensions do not run
 * in step (J. H. Halton, Numer. Math. 2, 1960; the random digits as A. B. Owen, "A randomized Halton algorithm in R", 2017,
 * from memory). Without a seed the plain sequence. The same on every machine.
 */
export class ScatteredPoints {
  private readonly bases: readonly number[];
  /** Of each dimension, of each digit place, what stands for a digit. */
  private readonly digits: readonly (readonly Int32Array[])[];

  /** @param seed a whole number; null = the plain sequence */
  constructor(dimensions: number, seed: number | null) {
    this.bases = primes(dimensions);
    const draw = seed === null ? null : wholeNumbers(seed);
    this.digits = this.bases.map((base) => {
      const places = Math.ceil(32 / Math.log2(base));
      return Array.from({ length: places }, () => {
        const order = Int32Array.from({ length: base }, (_, i) => i);
        for (let i = base - 1; i > 0 && draw !== null; i--) {
          const other = draw(i + 1);
          [order[i], order[other]] = [order[other]!, order[i]!];
        }
        return order;
      });
    });
  }

  /**
   * Fills `out` with the point of a number, each coordinate strictly between 0 and 1 with a seed.
   * @param index from 0; of the plain sequence the first is 1, since 0 is the corner
   * @throws RangeError past 2³² points
   */
  pointTo(out: Float64Array, index: number): void {
    if (!(index < MOST_POINTS))
      throw new RangeError(`ScatteredPoints: index must be less than 2³², got ${index}`);
    for (let d = 0; d < this.bases.length; d++) {
      const base = this.bases[d]!;
      let rest = index;
      let place = 1;
      let value = 0;
      for (const order of this.digits[d]!) {
        const digit = rest % base;
        rest = (rest - digit) / base;
        place /= base;
        value += order[digit]! * place;
      }
      // The middle of the last digit's cell, so that no end is met.
      out[d] = value + 0.5 * place;
    }
  }
}

/** The first primes. */
function primes(count: number): readonly number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((prime) => n % prime !== 0)) found.push(n);
  return found;
}
