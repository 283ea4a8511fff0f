import { describe, expect, it } from "vitest";
import { lowestTravels } from "../../../src/studies/map/lowestTravels.ts";
import { stanceMeasures } from "../../../src/studies/stances/stanceMeasures.ts";
import { clearanceText } from "../../../src/studies/wording/floorWords.ts";
import { heightAgainst } from "../../../src/studies/wording/poseWords.ts";
import { lowestStandsText, standsText } from "../../../src/studies/wording/standsWords.ts";
import { lowStop } from "../../../src/studies/wording/stopFacts.ts";
import { solvePose } from "../../../src/suspension/solvePose.ts";
import { mmFromInches } from "../../../src/units/lengthUnits.ts";
import { assembledModel, exampleSetup } from "../../reference/demoModel.ts";

const INCHES = { units: "in" } as const;
const model = assembledModel(exampleSetup("half-ton-limits.json"));

describe("how a truck stands at a pose", () => {
  it("is told against driving and by lip, frame and lowest point, each no higher than it is over where the tires stand", () => {
    const [travel, steer] = [mmFromInches(3), 0];
    const pose = solvePose(model.frontEnd, travel, steer);
    if (!pose.ok) throw new Error("out of reach");
    const { floor } = model.setup;
    // The rear follows and it is straight ahead: the floor is level.
    const ground = pose.left.contactPatch[2];
    const text = standsText(travel, steer, model, INCHES);
    const [, lip, frame, name, low] =
      /^wheel 3 in over driving, straight ahead; off the floor: fender lip over the axle (.*) in, frame (.*) in, (.*) \(lowest\) ([\d /]+) in$/.exec(
        text,
      ) ?? [];
    const near = (told: string | undefined, z: number) => {
      const [whole, over = "0/1"] = (told ?? "").split(" ");
      const [a, b] = over.split("/").map(Number);
      const mm = mmFromInches(Number(whole) + a! / b!);
      expect(mm).toBeLessThanOrEqual(z - ground + 1e-6);
      expect(mm).toBeGreaterThan(z - ground - mmFromInches(1 / 16));
    };
    near(lip, floor!.lip![2]);
    near(frame, floor!.frame![2]);
    const points = floor!.points
      .map((point) => ({ name: point.name, z: point.at[2] }))
      .sort((a, b) => a.z - b.z);
    expect(name).toBe(points[0]!.name);
    near(low, points[0]!.z);
  });

  it("calls the lowest of what may drag the lowest only where lip and frame are over it too", () => {
    const told = (z: number) => {
      const points = [
        { name: "cab step", at: [-900, 750, z] as const, side: "both" as const },
        { name: "tailpipe", at: [-900, 300, 1500] as const, side: "both" as const },
      ];
      const floor = { ...model.setup.floor!, points };
      return standsText(0, 0, { ...model, setup: { ...model.setup, floor } }, INCHES);
    };
    const { lip, frame } = model.setup.floor!;
    const under = Math.min(lip![2], frame![2]) - 30;
    const between = (lip![2] + frame![2]) / 2;
    expect(told(under)).toMatch(/, cab step \(lowest\) [\d /]+ in$/);
    expect(told(between)).toMatch(/, frame [\d /]+ in, cab step [\d /]+ in$/);
    expect(told(lip![2] + 30)).toMatch(/, cab step [\d /]+ in$/);
  });

  it("says the steering it is told at: the heights differ with it", () => {
    const [ahead, steered] = [0, -0.9].map((steer) => standsText(mmFromInches(3), steer, model, INCHES));
    expect(ahead).toContain(", straight ahead; ");
    expect(steered).toContain(", at 90% of right lock; ");
    expect(steered!.split("; ")[1]).not.toBe(ahead!.split("; ")[1]);
  });

  it("tells lip and frame by the rule of every stance: the same text as its measures have", () => {
    for (const travel of [-1, 0.37, 2, 3].map(mmFromInches)) {
      const { lipHeight, frameHeight } = stanceMeasures(model, travel)!;
      const text = standsText(travel, 0, model, INCHES);
      expect(text).toContain(`fender lip over the axle ${clearanceText(lipHeight!, INCHES)}, `);
      expect(text).toContain(`frame ${clearanceText(frameHeight!, INCHES)}, `);
    }
  });

  it("says that the lip is told over the axle only where it is measured there", () => {
    const [, y, z] = model.setup.floor!.lip!;
    const floor = { ...model.setup.floor!, lip: [120, y, z] as const };
    const text = standsText(0, 0, { ...model, setup: { ...model.setup, floor } }, INCHES);
    expect(text).toContain("off the floor: fender lip where measured ");
  });

  it("says by how much a point is in the floor, and no more than the height where nothing is measured to the floor", () => {
    const floor = {
      ...model.setup.floor!,
      points: [{ name: "exhaust", at: [0, 300, 10] as const, side: "both" as const }],
    };
    expect(standsText(mmFromInches(3), 0, { ...model, setup: { ...model.setup, floor } }, INCHES)).toMatch(
      /, exhaust \(lowest\) in the floor by [\d /]+ in$/,
    );
    const bare = { ...model, setup: { ...model.setup, floor: null } };
    expect(standsText(mmFromInches(-1), 0, bare, INCHES)).toBe("wheel 1 in under driving, straight ahead");
  });

  it("is told of a way's end at the travel the way itself tells, and not where it is not known where that is", () => {
    const [way] = lowestTravels(model, [1]);
    if (!way?.ok) throw new Error("out of reach");
    const told = lowStop(way.touch, 1, model, INCHES).travel;
    const exact = standsText(way.touch.either.at, 1, model, INCHES);
    expect(lowestStandsText(way, false, model, INCHES)).toBe(
      exact.replace(/^[^,]*/, heightAgainst(told, model.setup, INCHES)),
    );
    const kept = standsText(way.allowance.either.at, 1, model, INCHES);
    const down = lowStop(way.allowance, 1, model, INCHES).travel;
    expect(lowestStandsText(way, true, model, INCHES)).toBe(
      kept.replace(/^[^,]*/, heightAgainst(down, model.setup, INCHES)),
    );
    // Where the nearest sixteenth is the next one: it must not read as past the end told.
    const either = { ...way.touch.either, at: mmFromInches(1 + 15.8 / 16) };
    const near = lowestStandsText({ ...way, touch: { ...way.touch, either } }, false, model, INCHES);
    expect(near).toMatch(/^wheel 1 15\/16 in over driving, at full left lock; /);
    const open = { stop: "unproven", at: way.touch.either.at } as const;
    expect(lowestStandsText({ ...way, touch: { ...way.touch, either: open } }, false, model, INCHES)).toBe(
      "",
    );
  });
});
