/**
 * Coefficients of Wichura's algorithm AS 241, PPND16 (Applied Statistics 37, 1988, pp. 477–484; from memory, checked against
 * published quantiles): numerator and denominator in rising powers, for the middle, the shoulders and the far tails.
 */
const MIDDLE = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
] as const;
const SHOULDER = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
] as const;
const TAIL = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    0.000018463183175100548, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
] as const;

type Ratio = readonly [numerator: readonly number[], denominator: readonly number[]];

/**
 * The value below which a standard normal number lies with probability `p`, to about 16 digits. Made of sums, products,
 * quotients and square roots alone, which every machine rounds alike.
 * @param p strictly between 0 and 1
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratioAt(MIDDLE, 0.180625 - q * q);
  const r = Math.sqrt(-naturalLog(q < 0 ? p : 1 - p));
  const value = r <= 5 ? ratioAt(SHOULDER, r - 1.6) : ratioAt(TAIL, r - 5);
  return q < 0 ? -value : value;
}

function ratioAt([numerator, denominator]: Ratio, x: number): number {
  return polynomialAt(numerator, x) / polynomialAt(denominator, x);
}

function polynomialAt(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!;
  return sum;
}

/** Terms of the series below: from the last on nothing changes where the argument is within √2 of 1. */
const TERMS = 14;

/**
 * The natural logarithm of a number above 0, by ln m = 2 artanh((m − 1)/(m + 1)) with powers of two taken out: engines may
 * round their own logarithm differently.
 */
export function naturalLog(x: number): number {
  let m = x;
  let twos = 0;
  while (m < Math.SQRT1_2) {
    m *= 2;
    twos -= 1;
  }
  while (m > Math.SQRT2) {
    m *= 0.5;
    twos += 1;
  }
  const t = (m - 1) / (m + 1);
  const square = t * t;
  let sum = 0;
  for (let i = TERMS; i >= 0; i--) sum = sum * square + 1 / (2 * i + 1);
  return 2 * t * sum + twos * Math.LN2;
}

/** Between what a share lies, with the confidence asked for. */
export interface ShareInterval {
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval of a share of which so many of `of` were counted (E. B. Wilson, J. Am. Stat. Assoc. 22, 1927), as
 * for draws at random. Also where all or none were.
 * @param confidence strictly between 0 and 1
 */
export function wilsonInterval(counted: number, of: number, confidence: number): ShareInterval {
  if (of === 0) return { low: 0, high: 1 };
  const z = normalQuantile(0.5 + 0.5 * confidence);
  const share = counted / of;
  const middle = share + (z * z) / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of));
  const whole = 1 + (z * z) / of;
  return { low: Math.max(0, (middle - half) / whole), high: Math.min(1, (middle + half) / whole) };
}
