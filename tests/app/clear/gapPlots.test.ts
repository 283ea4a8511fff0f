import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { gapOverSteer } from "../../../src/app/clear/plots/gapPlots.ts";
import { truckOf } from "../../../src/app/state/truck.ts";
import { gapsAt } from "../../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";

it("laid over, each truck's curve is of the nearest part that moves against the wheel, however many ride along nearer", () => {
  const text = readFileSync("shared/half-ton-on-air.json", "utf8");
  const truck = (variant: string | null) => {
    const made = truckOf(text, "half-ton-on-air.json", variant);
    if (!made.ok) throw new TypeError(made.issues[0]!.mend);
    return made.value;
  };
  const [shown, narrow] = [truck(null), truck("narrow hub face")];
  const { series } = gapOverSteer(shown, 0, [{ name: "narrow", truck: narrow }]);
  for (const [i, of] of [shown, narrow].entries()) {
    const ys = series[i]!.points.map(({ y }) => y!);
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(1);
    // At full left lock: the least of the parts whose gap is another there than straight ahead, by a plain look at both poses.
    const nearer = (steer: number) => {
      const pose = solvePose(of.model.frontEnd, 0, steer);
      if (!pose.ok) throw new TypeError("stands");
      const gaps = new Map<string, number>();
      for (const { part, gap } of gapsAt(of.model, pose))
        gaps.set(part, Math.min(gap, gaps.get(part) ?? gap));
      return gaps;
    };
    const [ahead, lock] = [nearer(0), nearer(1)];
    const moved = [...lock].filter(([part, gap]) => Math.abs(gap - ahead.get(part)!) > 0.01);
    const least = Math.min(...moved.map(([, gap]) => gap));
    expect(ys.some((y) => Math.abs(y - least) < 1e-6)).toBe(true);
  }
});

it("not laid over, its curves are of the four parts that come nearest of those that move and the nearest that does not, as near as it is", () => {
  const text = readFileSync("shared/half-ton-limits.json", "utf8");
  const made = truckOf(text, "half-ton-limits.json", null);
  if (!made.ok) throw new TypeError(made.issues[0]!.mend);
  const { series } = gapOverSteer(made.value, 0);
  const fine = gapOverSteer(made.value, 0, [], "lock", true).series;
  const all = series[0]!.points.map(({ x }) => {
    const pose = solvePose(made.value.model.frontEnd, 0, x);
    if (!pose.ok) throw new TypeError("stands");
    const gaps = new Map<string, number>();
    for (const { part, gap } of gapsAt(made.value.model, pose))
      gaps.set(part, Math.min(gap, gaps.get(part) ?? gap));
    return gaps;
  });
  const least = [...all[0]!.keys()].map(
    (part) => [part, Math.min(...all.map((gaps) => gaps.get(part)!))] as const,
  );
  const isStill = (part: string) => {
    const gaps = all.map((one) => one.get(part)!);
    return Math.max(...gaps) - Math.min(...gaps) < 1e-3;
  };
  const sorted = least.sort((a, b) => a[1] - b[1]);
  const still = sorted.find(([part]) => isStill(part));
  const nearest = sorted.filter((one) => !isStill(one[0]) || one === still).slice(0, 4);
  expect(nearest.filter(([part]) => !isStill(part)).length).toBeGreaterThan(1);
  expect(series.map(({ name }) => name)).toEqual(nearest.map(([part]) => part));
  // One of them rides on the knuckle: told a micrometer too large at most.
  expect(nearest.filter(([part]) => part.startsWith("caliper")).length).toBeGreaterThan(0);
  for (const { name, points } of series)
    for (const [k, { y }] of points.entries()) {
      const off = y! - all[k]!.get(name)!;
      expect(off).toBeGreaterThan(-1e-6);
      expect(off).toBeLessThan(1e-3 + 1e-6);
      // As it is saved: as finely as it is known.
      const saved = fine.find((one) => one.name === name)!.points[k]!.y!;
      expect(Math.abs(saved - all[k]!.get(name)!)).toBeLessThan(1e-6);
    }
});
