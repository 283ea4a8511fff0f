import { describe, expect, it } from "vitest";
import { limitsPassed } from "../../../src/studies/limits/limitsPassed.ts";
import type { Model } from "../../../src/studies/model/model.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { rangesOf } from "../../../src/studies/search/sideRange.ts";
import { OtherBetween } from "../../../src/studies/window/otherBetween.ts";
import { truckWith } from "../../../src/studies/window/truckOverField.ts";
import { windowField } from "../../../src/studies/window/windowField.ts";
import { armAngleFor } from "../../../src/suspension/armAngle.ts";
import { PoseStatus } from "../../../src/suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../../src/suspension/steering.ts";
import { runs } from "../../runs.ts";
import { windowSubject } from "./windowSubject.ts";

/** Repeatable draws between 0 and 1 (the generator of Numerical Recipes' quick and dirty section, from memory). */
function draws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe("the other wheel over a stretch of a field, where left and right differ", () => {
  const { subject } = windowSubject("long-bed-steering-box.json");
  const found = windowField(subject.document, subject.setup, "knuckle.hubFace", "test");
  if (!found.ok) throw new Error(found.issues[0]?.mend);
  const truck = (value: number): Model => {
    const made = truckWith(subject, [[found.value, value]]);
    if (!made.ok) throw new Error(made.issues[0]?.mend);
    return made.value;
  };
  const [low, high] = [truck(130), truck(170)];
  const between = Array.from({ length: runs(4, 8) }, (_, i) => truck(130 + (40 * (i + 0.5)) / runs(4, 8)));
  const passedOf = (model: Model) => limitsPassed(model, false, Budget.endless());
  const all = [low, ...between, high];
  const passed = [...new Map(all.flatMap(passedOf).map((one) => [`${one.side} ${one.name}`, one])).values()];
  const ranges = all.map((model) => rangesOf(model, passed, false));

  it.each(["left", "right"] as const)("stands and keeps its limits wherever that is said, %s", (side) => {
    const other = new OtherBetween(truck(150), side, passed);
    const random = draws(side === "left" ? 3 : 4);
    const ends = new Float64Array(INNER_ENDS_ROW);
    const told = { yes: 0, no: 0 };
    for (let i = 0; i < runs(300, 1000); i++) {
      // Down low near a lock, where the other wheel is past its steering stop at some.
      const travel = -78 + 60 * random();
      const steer = (random() < 0.5 ? -1 : 1) * (1 - 0.2 * random());
      const arm = armAngleFor(low.frontEnd[side], travel);
      if (Number.isNaN(arm) || low.frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) continue;
      const counts = ranges.map(
        ({ [side]: { wheel } }) =>
          (wheel.limits?.keepsAt(arm, steer) ?? true) && (wheel.other?.stands(arm, ends) ?? true),
      );
      // Its own limits are another's to look at: this wheel's alone say nothing of the other.
      const own = rangesOf(low, passed, true)[side].wheel.limits?.keepsAt(arm, steer) ?? true;
      if (!own) continue;
      const keeps = other.keeps(low, high, arm, steer);
      told[keeps ? "yes" : "no"]++;
      if (keeps) expect([travel, steer, counts]).toEqual([travel, steer, counts.map(() => true)]);
    }
    expect(told.yes).toBeGreaterThan(20);
    expect(told.no).toBeGreaterThan(5);
  });
});
