import jsQR from "jsqr";
import { modulesOf } from "../../src/app/show/counter/QrCode.tsx";

/** Pixels a module, as a camera might see it. */
const SCALE = 3;

/**
 * What a reader that knows nothing of the writer reads off the path drawn of a text; undefined = nothing.
 * @param stained side of a white stain in the middle of it, a share of the code's
 */
export function scanned(text: string, stained = 0): string | undefined {
  const { size, path } = modulesOf(text)!;
  const side = size * SCALE;
  const pixels = new Uint8ClampedArray(4 * side * side).fill(255);
  const isStained = (at: number) => Math.abs(at / side - 0.5) < stained / 2;
  for (const [, u, v, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let y = Number(v) * SCALE; y < (Number(v) + 1) * SCALE; y++) {
      const start = Number(u) * SCALE;
      for (let x = start; x < start + Number(run) * SCALE; x++) {
        if (isStained(x) && isStained(y)) continue;
        pixels.fill(0, 4 * (y * side + x), 4 * (y * side + x) + 3);
      }
    }
  }
  return jsQR(pixels, side, side)?.data;
}
