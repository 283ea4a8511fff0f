import { expect, it } from "vitest";
import { MOST_MODULES, modulesOf } from "../../src/app/show/counter/QrCode.tsx";
import { scanned } from "./scanned.ts";

const url = (letters: number) =>
  `https://example.org/Wellsweep/#setup=2.${"A1Z09".repeat(letters)}`.slice(0, letters);

it("a code is read back by another library's reader, up to the largest that is drawn", () => {
  for (const length of [60, 300, 700, 1400]) expect(scanned(url(length)), `${length}`).toBe(url(length));
});

it("capitals and digits take a third less than other letters: more of them in a code of the same size", () => {
  const capitals = modulesOf(url(1000))!;
  const mixed = modulesOf(url(1000).toLowerCase())!;
  expect(capitals.size).toBeLessThan(mixed.size);
  // ISO/IEC 18004, capacities at level L: version 14 holds 667 capitals and digits, version 15 holds 520 bytes.
  expect(modulesOf("A".repeat(667))!.size).toBe(17 + 4 * 14 + 8);
  expect(modulesOf("a".repeat(520))!.size).toBe(17 + 4 * 15 + 8);
});

it("a code with room left has more correction: a fifth of its middle may be lost", () => {
  // Version 1 at level L holds 25 capitals and digits, at level H ten.
  const { size, path } = modulesOf("A1B2C3D4")!;
  expect(size).toBe(17 + 4 + 8);
  expect(path).not.toBe("");
  expect(scanned("A1B2C3D4", 0.12)).toBe("A1B2C3D4");
});

it("none is drawn with modules under half a millimeter", () => {
  expect(60 / MOST_MODULES).toBeGreaterThanOrEqual(0.5);
  // Version 23 holds 1588 capitals and digits at level L.
  expect(modulesOf("A".repeat(1588))!.size).toBe(MOST_MODULES);
  expect(modulesOf("A".repeat(1589))).toBeNull();
});
