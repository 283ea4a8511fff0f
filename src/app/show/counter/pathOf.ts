import type { SheetPoint } from "./wheelDrawing.ts";

/** Points as the data of an SVG path, to a tenth of a millimeter. */
export function pathOf(points: readonly SheetPoint[], isClosed: boolean): string {
  const steps = points.map(([u, v], i) => `${i === 0 ? "M" : "L"}${u.toFixed(1)} ${v.toFixed(1)}`);
  return steps.join("") + (isClosed ? "Z" : "");
}

/** Closed loops as one path. */
export function loopsOf(loops: readonly (readonly SheetPoint[])[]): string {
  return loops.map((loop) => pathOf(loop, true)).join("");
}
