type Place = readonly [x: number, y: number];

export type DimensionProps = {
  from: Place;
  to: Place;
  /** Picture units to the side of the line from → to (right of it, as y runs down), where the dimension is drawn. Default 0. */
  aside?: number;
  /** Default none. */
  word?: string;
  /** Where the word stands from the middle of the line. Default just right of and above it. */
  wordAt?: Place;
};

const HEAD = 6;

/** The dimension that a sketch is about: a line with an arrow at either end, and lines out to what it measures. */
export function Dimension({ from, to, aside = 0, word, wordAt = [5, -5] }: DimensionProps) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const [nx, ny] = [-uy, ux];
  const a: Place = [from[0] + nx * aside, from[1] + ny * aside];
  const b: Place = [to[0] + nx * aside, to[1] + ny * aside];
  const head = ([x, y]: Place, way: 1 | -1) => {
    const [bx, by] = [x + way * ux * HEAD, y + way * uy * HEAD];
    return `M${bx + nx * 3},${by + ny * 3} L${x},${y} L${bx - nx * 3},${by - ny * 3}`;
  };
  return (
    <g>
      {aside !== 0 && (
        <path
          className="sketch-thin"
          d={`M${from[0]},${from[1]} L${a[0]},${a[1]} M${to[0]},${to[1]} L${b[0]},${b[1]}`}
        />
      )}
      <path className="sketch-lit" d={`M${a[0]},${a[1]} L${b[0]},${b[1]} ${head(a, 1)} ${head(b, -1)}`} />
      {word && (
        <text className="sketch-word-lit" x={(a[0] + b[0]) / 2 + wordAt[0]} y={(a[1] + b[1]) / 2 + wordAt[1]}>
          {word}
        </text>
      )}
    </g>
  );
}
