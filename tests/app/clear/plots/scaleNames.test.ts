import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { isReversed, plotBox, plotFrame, scaleName } from "../../../../src/app/clear/plots/plotFrame.ts";
import { plotNames, plotSpec } from "../../../../src/app/clear/plots/plotSpecs.ts";
import { unitText } from "../../../../src/app/parts/plotNumbers.ts";
import { ticksAcross } from "../../../../src/app/parts/scaleTicks.ts";
import { truckOf } from "../../../../src/app/state/truck.ts";
import { runs } from "../../../runs.ts";

/** Widths of Helvetica's letters, thousandths of its size (the metrics that Adobe publishes of its core fonts; from memory). */
const WIDTHS: Readonly<Record<string, number>> = {
  ...{ " ": 278, ",": 278, ".": 278, "'": 191, "/": 278, "+": 584, "−": 584, "-": 333, "%": 889, "°": 400 },
  ...{ f: 278, i: 222, j: 222, l: 222, r: 333, t: 278, m: 833, w: 722, c: 500, k: 500, s: 500, v: 500 },
  ...{ x: 500, y: 500, z: 500, L: 556, R: 722 },
};
const wide = (text: string) => [...text].reduce((sum, one) => sum + (WIDTHS[one] ?? 556), 0) * 0.011;

it("a plot's scale says what it is whole and its marks stand apart, at every width from 190 to 900 px", () => {
  const file = "half-ton-limits.json";
  const text = readFileSync(new URL(`../../../../shared/${file}`, import.meta.url), "utf8");
  const made = truckOf(text, file, null);
  if (!made.ok) throw new TypeError(made.issues[0]!.mend);
  const truck = made.value;
  let briefly = 0;
  for (const { id } of plotNames(truck)) {
    for (const scale of ["angle", "lock"] as const) {
      const spec = plotSpec(id, { truck, others: [], scale, travel: 0, steer: 0 })!;
      for (const units of ["in", "mm"] as const) {
        for (let width = 190; width <= 900; width += runs(30, 10)) {
          const at = `${id} ${scale} ${units} ${width}`;
          const { box, across, x } = plotFrame(spec, plotBox(width, 160), null);
          const unit = unitText(spec.x.measure, { units });
          const room = width - box.right - 4;
          const name = scaleName(spec.x, unit, room);
          expect(name.endsWith(`, ${unit}`), at).toBe(true);
          expect(wide(name), at).toBeLessThanOrEqual(room);
          expect(wide(`${spec.y.label}, ${unitText(spec.y.measure, { units })}`), at).toBeLessThan(width - 4);
          if (!name.startsWith(spec.x.label)) briefly++;
          const ticks = ticksAcross(across.low, across.high, width - box.left - box.right, spec.x.measure, {
            units,
          });
          expect(ticks.length, at).toBeGreaterThanOrEqual(2);
          const places = ticks.map((tick) => ({ at: x(tick.at), half: 0.5 * wide(tick.text) }));
          if (isReversed(spec)) places.reverse();
          for (const [i, { at: middle, half }] of places.entries())
            if (i > 0) expect(middle - half, at).toBeGreaterThan(places[i - 1]!.at + places[i - 1]!.half + 2);
        }
      }
    }
  }
  // The short name is taken where it must be.
  expect(briefly).toBeGreaterThan(0);
});
