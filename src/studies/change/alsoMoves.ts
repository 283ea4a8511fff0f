import { solvePose } from "../../suspension/solvePose.ts";
import { bumpSteer } from "../geometry/bumpSteer.ts";
import { limitsPassed } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import type { AlsoMoves } from "./changeTypes.ts";

/** mm. What a tape does not show is not told. */
const LEAST_LENGTH = 0.5;

/** rad. A hundredth of a degree of toe. */
const LEAST_TOE = 1.7e-4;

/** What is there to be met. */
const STOPS: ReadonlySet<string> = new Set(["bump stop", "droop strap", "steering stop"]);

/** What else differs between a truck and the same with a change. */
export function alsoMoves(before: Model, after: Model, budget: Budget): readonly AlsoMoves[] {
  const moved: AlsoMoves[] = [];
  const [a, b] = [solvePose(before.frontEnd, 0, 0), solvePose(after.frontEnd, 0, 0)];
  if (a.ok && b.ok) {
    const lengths = [
      ["rideHeight", -a.left.contactPatch[2], -b.left.contactPatch[2]],
      ["scrubRadius", a.left.scrubRadius, b.left.scrubRadius],
      ["halfTrack", Math.abs(a.left.contactPatch[1]), Math.abs(b.left.contactPatch[1])],
    ] as const;
    for (const [what, from, to] of lengths)
      if (Math.abs(to - from) >= LEAST_LENGTH) moved.push({ what, from, to });
  }
  const drop = dropOf(before, after);
  if (drop !== null) moved.splice(moved[0]?.what === "rideHeight" ? 1 : 0, 0, drop);
  const toe = (model: Model) => bumpSteer(model.frontEnd, "left", before.setup.travel)?.rms ?? null;
  const [from, to] = [toe(before), toe(after)];
  if (from !== null && to !== null && Math.abs(to - from) >= LEAST_TOE)
    moved.push({ what: "bumpSteer", from, to });
  const { limits, airSpring } = before.setup;
  if (limits !== null || airSpring !== null) {
    const alone = before.setup.roll !== null;
    const known = limitsPassed(before, alone, budget.share(2)).map(({ side, name }) => `${side} ${name}`);
    for (const { side, name } of limitsPassed(after, alone, budget.share(1)))
      if (!STOPS.has(name) && !known.includes(`${side} ${name}`)) moved.push({ what: "limit", name, side });
  }
  const out = (model: Model, pose: typeof a) =>
    pose.ok ? Math.abs(pose.left.wheelCenter[1]) + outboardOf(model) : 0;
  if (out(after, b) - out(before, a) >= LEAST_LENGTH) moved.push({ what: "fenderCover" });
  return moved;
}

/** Drop of the truck as it stands that is taken away, beside what is ordered; null = none is. */
function dropOf(before: Model, after: Model): AlsoMoves | null {
  const { order } = before.setup;
  if (order === null || order.base.pinHeight === null || (order.drop ?? 0) <= 0) return null;
  const [from, to] = [before, after].map(({ setup }) => setup.knuckle.pinHeight - order.base.pinHeight!) as [
    number,
    number,
  ];
  return from > 0 && from - to >= LEAST_LENGTH ? { what: "drop", from, to, ordered: order.drop! } : null;
}

/** mm. How far the tire stands out of its center plane. */
function outboardOf({ ring }: Model): number {
  return Math.max(...ring.outline.map(([x]) => x));
}
