/** An arm from above, front up, with what moves its pivots. @param lit the key measured */
export function PivotsSketch({ lit }: { lit: string }) {
  const isLit = (key: string) =>
    lit === key || (lit !== "front" && lit !== "rear") ? "sketch-lit" : "sketch-faint";
  const arrow = (y: number) => `M96,${y} L58,${y} M66,${y - 5} L57,${y} L66,${y + 5}`;
  return (
    <>
      <path className="sketch-axis" d="M30,8 L30,156" />
      <path className="sketch-part" d="M96,34 L188,82 L96,130 Z" />
      <circle className="sketch-part" cx={96} cy={34} r={8} />
      <circle className="sketch-part" cx={96} cy={130} r={8} />
      <circle className="sketch-part" cx={188} cy={82} r={9} />
      <path className={isLit("front")} d={arrow(34)} />
      <path className={isLit("rear")} d={arrow(130)} />
      <text className="sketch-word" x={108} y={26}>
        front pivot
      </text>
      <text className="sketch-word" x={108} y={150}>
        rear pivot
      </text>
      <text className="sketch-word" x={34} y={86}>
        ↑ front
      </text>
    </>
  );
}
