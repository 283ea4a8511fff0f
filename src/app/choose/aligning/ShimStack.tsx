/** Shims on the shelf, in thinnest ones: each twice the one before, as 1/32, 1/16 and 1/8 in are (common practice, no source). */
const SIZES = [4, 2, 1] as const;

/** Shims that make a stack, thickest first, mm: whole ones of four, two and one steps, and what is left over last. */
export function shimPieces(stack: number, step: number): number[] {
  let left = stack;
  const pieces: number[] = [];
  for (const size of SIZES) {
    const piece = size * step;
    const count = Math.floor(left / piece + 1e-6);
    for (let i = 0; i < count; i++) pieces.push(piece);
    left -= count * piece;
  }
  // A stack as measured need not be whole steps.
  return left > 1e-6 * step ? [...pieces, left] : pieces;
}

export type ShimStackProps = {
  /** mm. */
  stack: number;
  /** The stack the truck was measured with, mm. */
  asBolted: number;
  /** The thickest stack there may be, mm: the same picture scale for all that have it. */
  most: number;
  /** The thinnest shim, mm. */
  step: number;
};

/** Picture units. */
const FRAME = 14;
const WIDEST = 84;
const SHAFT = 18;
const HEIGHT = 50;

/** One stack from above, to scale: frame bracket, shims on their bolt, the arm's shaft; dashed, the shaft as bolted on. */
export function ShimStack({ stack, asBolted, most, step }: ShimStackProps) {
  const scale = WIDEST / most;
  let at = FRAME;
  const shims = shimPieces(stack, step).map((piece) => {
    const from = at;
    at += piece * scale;
    return { from, width: piece * scale };
  });
  const before = FRAME + asBolted * scale;
  const middle = HEIGHT / 2;
  return (
    <svg
      className="shim-stack"
      viewBox={`0 0 ${FRAME + WIDEST + SHAFT + 10} ${HEIGHT}`}
      aria-hidden="true"
      focusable="false"
    >
      <rect className="shim-frame" x={1} y={2} width={FRAME - 1} height={HEIGHT - 4} />
      <path className="shim-room" d={`M${FRAME + WIDEST},3 V${HEIGHT - 3}`} />
      <rect className="shim-shaft" x={at} y={middle - 14} width={SHAFT} height={28} rx={3} />
      {shims.map(({ from, width }, i) => (
        <rect
          key={from}
          className={i % 2 === 0 ? "shim-a" : "shim-b"}
          x={from}
          y={8}
          width={width}
          height={HEIGHT - 16}
        />
      ))}
      <path className="shim-bolt" d={`M4,${middle} H${at + SHAFT + 8}`} />
      {Math.abs(before - at) > 0.2 && <path className="shim-before" d={`M${before},3 V${HEIGHT - 3}`} />}
    </svg>
  );
}
