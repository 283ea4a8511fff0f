import { Color, DataTexture, LinearFilter } from "three";

/** How a surface takes light: rubber drinks it, metal mirrors a bright sky over a dark floor, paint is between. */
export type Finish = "rubber" | "metal" | "paint";

/** Pixels across. A ball this small is smooth enough: it is read between its pixels. */
const SIZE = 64;

/** From the surface toward the light, as the eye sees it: x right, y up, z toward the eye; unit. */
const LIGHT = [-0.45, 0.65, 0.61] as const;

/**
 * How bright a surface looks that faces (x, y, z) as the eye sees it, as a share of its color: 0 to 1.
 */
export function brightness(finish: Finish, x: number, y: number, z: number): number {
  const facing = Math.max(0, x * LIGHT[0] + y * LIGHT[1] + z * LIGHT[2]);
  switch (finish) {
    case "rubber":
      return Math.min(1, 0.62 + 0.3 * facing ** 2 + 0.1 * z);
    case "paint":
      return Math.min(1, 0.76 + 0.22 * facing + 0.1 * facing ** 12);
    case "metal": {
      const sky = smooth(-0.25, 0.55, y);
      const horizon = Math.exp(-(((y + 0.22) / 0.16) ** 2));
      return Math.min(1, 0.58 + 0.32 * sky - 0.2 * horizon + 0.3 * facing ** 14);
    }
  }
}

/**
 * A ball of a stuff under the stage's light, as a picture in the colors of the screen: a surface is drawn in the shade of the
 * ball where it faces the same way.
 */
export function litBall(finish: Finish, stuff: Color): DataTexture {
  const data = new Uint8Array(4 * SIZE * SIZE);
  const shade = new Color();
  for (let row = 0; row < SIZE; row++) {
    for (let column = 0; column < SIZE; column++) {
      let x = (2 * (column + 0.5)) / SIZE - 1;
      let y = (2 * (row + 0.5)) / SIZE - 1;
      // Beyond the rim of the ball as at the rim: what is read between pixels reaches a little over it.
      const out = Math.hypot(x, y);
      if (out > 1) [x, y] = [x / out, y / out];
      const z = Math.sqrt(Math.max(0, 1 - x * x - y * y));
      // What a screen shows as so bright is more than so much light.
      shade
        .setScalar(brightness(finish, x, y, z))
        .convertSRGBToLinear()
        .multiply(stuff)
        .convertLinearToSRGB();
      data.set([...shade.toArray().map((level) => Math.round(255 * level)), 255], 4 * (row * SIZE + column));
    }
  }
  const ball = new DataTexture(data, SIZE, SIZE);
  ball.minFilter = LinearFilter;
  ball.magFilter = LinearFilter;
  ball.needsUpdate = true;
  return ball;
}

function smooth(from: number, to: number, at: number): number {
  const t = Math.min(1, Math.max(0, (at - from) / (to - from)));
  return t * t * (3 - 2 * t);
}
