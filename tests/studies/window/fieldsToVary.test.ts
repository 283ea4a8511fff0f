import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { fieldsToVary } from "../../../src/studies/window/fieldsToVary.ts";
import { changedSetup } from "../../../src/studies/window/truckOverField.ts";
import { fieldName } from "../../../src/studies/wording/fieldName.ts";
import { windowSubject } from "./windowSubject.ts";

const SHARED = new URL("../../../shared/", import.meta.url);

describe("fields that can be given other values", () => {
  const { subject } = windowSubject("half-ton-limits.json");
  const fields = fieldsToVary(subject.document, subject.setup, "test");
  const keys = fields.map(({ key }) => key);

  it("are the knuckle's first, and every coordinate of arms, tie rod ends, air spring, lip and frame", () => {
    expect(keys[0]).toBe("knuckle.span");
    for (const point of [
      "truck.upperArm.frontPivot",
      "truck.lowerArm.ballJoint",
      "truck.steering.innerEnd",
      "knuckle.steeringArm",
      "airSpring.armMount",
      "truck.body[0].points[10]",
      "truck.body[2].max",
      "hardware.caliper.min",
    ])
      expect(keys).toEqual(expect.arrayContaining([0, 1, 2].map((axis) => `${point}[${axis}]`)));
    expect(keys).toEqual(
      expect.arrayContaining([
        "wheel.backspacing",
        "wheel.offset",
        "tire.diameter",
        "limits.steeringStop.angle",
      ]),
    );
  });

  it("leave out what moves nothing: aims, weights, a mesh's vertices, names", () => {
    const still =
      /^(masses|loads|jig|odds|order|build|asBuilt|readings|stances|floor|alignment\.targets)|vertices|curve/;
    expect(keys.filter((key) => still.test(key))).toEqual([]);
  });

  it("have names that tell them apart", () => {
    const names = fields.map(({ path }) => fieldName(path, subject.document));
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(readdirSync(SHARED).filter((file) => file.endsWith(".json") && file !== "tire-sizes.json"))(
    "of %s can each be written again as they stand",
    (file) => {
      if (JSON.parse(readFileSync(new URL(file, SHARED), "utf8")).format !== "wellsweep-setup") return;
      if (file === "scanned-fender.json") return; // its mesh stands beside it
      const { subject: one } = windowSubject(file);
      const all = fieldsToVary(one.document, one.setup, file);
      expect(all.length).toBeGreaterThan(40);
      for (const { key, path, put, now } of all) {
        const changed = changedSetup(one, [{ path, put: (typed) => put(typed, now) }]);
        expect([key, changed.ok || changed.issues]).toEqual([key, true]);
      }
    },
  );
});
