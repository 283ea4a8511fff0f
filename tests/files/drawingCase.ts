import type { SectionDrawing } from "../../src/geometry/sectionDrawing.ts";

/** A ring-shaped section with a hole, two parts of one name, an open line and a single straight piece; mm. */
export function drawingCase(units: "in" | "mm"): SectionDrawing {
  return {
    units,
    title: ['Truck <"A&B"> 5 5/8″', "Section at X = 0"],
    cautions: ["Measure twice, cut once.", "No statement of safety."],
    figures: [
      {
        kind: "envelope",
        name: "envelope left",
        outlines: [square(100, 200, 254, 1), square(150, 250, 127, -1)],
      },
      { kind: "part", name: "fender lip", outlines: [square(380, 220, 25.4, 1)] },
      {
        kind: "part",
        name: "fender lip",
        outlines: [{ points: Float64Array.of(0, 0, 50, 10, 60, -30), closed: false }],
      },
      {
        kind: "ring",
        name: "tire and rim",
        outlines: [{ points: Float64Array.of(-10, 5, 90, 5), closed: false }],
      },
    ],
  };
}

function square(u: number, v: number, side: number, way: 1 | -1) {
  const round = [u, v, u + side, v, u + side, v + side, u, v + side];
  const points = way === 1 ? round : [u, v, u, v + side, u + side, v + side, u + side, v];
  return { points: Float64Array.from(points), closed: true };
}
