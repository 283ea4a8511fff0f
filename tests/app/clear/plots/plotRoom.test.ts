import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { readAt, slopeAt } from "../../../../src/app/clear/plots/curveSlope.ts";
import { PlotValues } from "../../../../src/app/clear/plots/PlotValues.tsx";
import { placeText } from "../../../../src/app/clear/plots/placeText.ts";
import { placeRoom, slopeRoom, valueRoom } from "../../../../src/app/clear/plots/plotRoom.ts";
import { plotNames, plotSpec } from "../../../../src/app/clear/plots/plotSpecs.ts";
import { curveText, type PlotSpec, slopeStep } from "../../../../src/app/parts/plotNumbers.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import type { LengthFormat } from "../../../../src/units/formatLength.ts";

const SHARED = join(import.meta.dirname, "..", "..", "..", "..", "shared");
const read = truckOf(
  readFileSync(join(SHARED, "half-ton-limits.json"), "utf8"),
  "half-ton-limits.json",
  null,
);
if (!read.ok) throw new Error(read.issues[0]!.mend);
const truck = read.value;

const FORMATS: readonly LengthFormat[] = [
  { units: "in", fraction: 16 },
  { units: "in", fraction: 64 },
  { units: "in", fraction: "decimal", decimals: 3 },
  { units: "mm" },
];

/** All plots of the truck that has every curve; those that run off have no widest number. */
const PLOTS = (["angle", "lock"] as const).flatMap((scale) =>
  plotNames(truck).flatMap(({ id }) => {
    const spec = plotSpec(id, { truck, others: [], scale, travel: 20, steer: 0.3 });
    return spec === null ? [] : [{ name: `${id} (${scale})`, spec }];
  }),
);

/** Places all along a plot, off the round ones too. */
function placesOf({ series }: PlotSpec): readonly number[] {
  const xs = series[0]!.points.map(({ x }) => x);
  return xs.flatMap((x, i) => (i === 0 ? [x] : [x, x - 0.37 * (x - xs[i - 1]!)]));
}

const longest = (texts: readonly string[]) => Math.max(...texts.map((text) => text.length));

describe("what a plot reads", () => {
  it.each(PLOTS)("of $name keeps within the room that stands free for it", ({ spec }) => {
    const { measure, isWild } = spec.y;
    const places = placesOf(spec);
    expect(places.length).toBeGreaterThan(10);
    for (const format of FORMATS) {
      const [place, value, slope] = [placeRoom, valueRoom, slopeRoom].map((room) =>
        longest(room(spec, format)),
      );
      for (const x of places) {
        expect(placeText(spec, x, format).length).toBeLessThanOrEqual(place!);
        if (isWild) continue;
        for (const series of spec.series) {
          const [at, per] = [readAt(series, x), slopeAt(spec, series, x)];
          if (at !== null) expect(curveText(at, measure, format).length).toBeLessThanOrEqual(value!);
          if (per !== null) expect(slopeStep(per, spec, format).length).toBeLessThanOrEqual(slope!);
        }
      }
    }
  });

  it("of several curves has a line a curve, each number with its room, and says once what slopes are over", () => {
    const spec = plotSpec("gap-travel", { truck, others: [], scale: "lock", travel: 0, steer: 0 })!;
    const format = FORMATS[0]!;
    const markup = renderToStaticMarkup(
      createElement(PlotValues, { id: "v", spec, at: 0, isPose: true, band: {}, format }),
    );
    expect(markup).toMatch(/^<p id="v" class="plot-values plot-values-many">/);
    expect(markup.replace(/data-room="[^"]*"/g, "").match(/per in/g)).toHaveLength(1);
    expect(markup).toContain("now 0 in, and slope per in:");
    const rooms = [...markup.matchAll(/<b class="plot-room" data-room="([^"]*)">([^<]*)<\/b>/g)];
    expect(rooms).toHaveLength(spec.series.length);
    for (const [, room, text] of rooms) expect(text!.length).toBeLessThanOrEqual(longest(room!.split("\n")));
  });
});
