import jsQR from "jsqr";
import { expect, it } from "vitest";
import { MOST_SCANNED, modulesOf } from "../../src/app/show/counter/QrCode.tsx";

/** Pixels a module, as a camera might see it. */
const SCALE = 3;

/** What a reader that knows nothing of the writer reads off the path drawn. */
function scanned(text: string): { readonly size: number; readonly text: string | undefined } {
  const { size, path } = modulesOf(text);
  const side = size * SCALE;
  const pixels = new Uint8ClampedArray(4 * side * side).fill(255);
  for (const [, u, v, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let y = Number(v) * SCALE; y < (Number(v) + 1) * SCALE; y++) {
      const start = Number(u) * SCALE;
      for (let x = start; x < start + Number(run) * SCALE; x++) {
        pixels.fill(0, 4 * (y * side + x), 4 * (y * side + x) + 3);
      }
    }
  }
  return { size, text: jsQR(pixels, side, side)?.data };
}

const url = (length: number) => `https://example.org/#setup=1.${"aZ9-_".repeat(length)}`.slice(0, length);

it("a code is read back by another library's reader, up to the longest that is drawn", () => {
  for (const length of [60, 700, MOST_SCANNED]) expect(scanned(url(length)).text).toBe(url(length));
});

it("the longest that is drawn fills version 32 to its last byte", () => {
  // ISO/IEC 18004: version v has 17 + 4 v modules a side; about it four of white on every side.
  expect(modulesOf(url(MOST_SCANNED)).size).toBe(17 + 4 * 32 + 8);
  expect(modulesOf(url(MOST_SCANNED + 1)).size).toBe(17 + 4 * 33 + 8);
});
