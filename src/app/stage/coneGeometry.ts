import { BufferGeometry, ConeGeometry, Float32BufferAttribute } from "three";

/** A cone with its point at the origin, open along +x. @param half angle, radians; @param length mm, along its side */
export function coneGeometry(half: number, length: number): BufferGeometry {
  const height = length * Math.cos(half);
  // Three's own stands on its base along +y, its point up.
  return new ConeGeometry(length * Math.sin(half), height, 32, 1, true)
    .translate(0, -0.5 * height, 0)
    .rotateZ(0.5 * Math.PI);
}

/** Lines of such a cone: its rim and so many lines from the point to it. */
export function coneLines(half: number, length: number, spokes: number): BufferGeometry {
  const x = length * Math.cos(half);
  const r = length * Math.sin(half);
  const at = (turn: number): [number, number, number] => [x, r * Math.cos(turn), r * Math.sin(turn)];
  const positions: number[] = [];
  const steps = 48;
  for (let i = 0; i < steps; i++) {
    positions.push(...at((2 * Math.PI * i) / steps), ...at((2 * Math.PI * (i + 1)) / steps));
  }
  for (let i = 0; i < spokes; i++) positions.push(0, 0, 0, ...at((2 * Math.PI * i) / spokes));
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}
