import { readFileSync } from "node:fs";
import { join } from "node:path";
import { curvePath, plotBox, plotFrame } from "../../src/app/clear/plots/plotFrame.ts";
import { plotNames, plotSpec } from "../../src/app/clear/plots/plotSpecs.ts";
import { GivenMeshes } from "../../src/app/state/givenMeshes.ts";
import { type Truck, trucks } from "../../src/app/state/truck.ts";
import type { TypedDocument } from "../../src/app/state/typedDocument.ts";
import { setAt } from "../../src/setup/reading/setAt.ts";
import type { Job } from "./job.ts";

const FILE = "half-ton-limits.json";
const DOCKED = ["camber", "toe", "scrub", "gap-steer"];

/** A field changed, and the curves beside it: the truck made anew, then its curves and their lines. React's own work not counted. */
export function curveJobs(): Job[] {
  const path = join(import.meta.dirname, "..", "..", "shared", FILE);
  const document = JSON.parse(readFileSync(path, "utf8")) as TypedDocument;
  const meshes = new GivenMeshes();
  let turn = 0;
  const changed = (): Truck => {
    // Another number each time, as a hand steps it: nothing is known of the truck yet.
    turn++;
    const typed = setAt(
      document,
      ["knuckle", "hubFace"],
      6 + (turn % 64) / 128 + turn * 1e-6,
    ) as TypedDocument;
    const made = trucks.make(typed, FILE, null, meshes);
    if (!made.ok) throw new Error(made.issues[0]!.mend);
    return made.value;
  };
  const drawn = (truck: Truck, ids: readonly string[]): number => {
    let sum = 0;
    for (const id of ids) {
      const spec = plotSpec(id, { truck, others: [], scale: "angle", travel: 0, steer: 0 });
      if (spec === null) continue;
      const frame = plotFrame(spec, plotBox(340, 220), null);
      for (const { points } of spec.series) sum += curvePath(points, frame).length;
    }
    // How many places a line has, not where they are: each turn is of another truck.
    return Math.round(sum / 1000);
  };
  const all = plotNames(changed()).map(({ id }) => id);
  return [
    {
      name: `a field changed, ${DOCKED.length} curves beside it`,
      each: "change",
      size: 1,
      repeats: 30,
      aimMs: 50,
      run: () => drawn(changed(), DOCKED),
    },
    {
      name: `a field changed, all ${all.length} plots`,
      each: "change",
      size: 1,
      repeats: 15,
      aimMs: 50,
      run: () => drawn(changed(), all),
    },
  ];
}
