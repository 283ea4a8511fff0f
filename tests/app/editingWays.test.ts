import { describe, expect, it } from "vitest";
import { newBox, newPath } from "../../src/app/measure/body/newPart.ts";
import {
  startCaliper,
  steeringOfType,
  tireGivenBy,
  wheelGivenBy,
} from "../../src/app/measure/groups/ways.ts";
import { createWorkbenchStore } from "../../src/app/state/workbenchStore.ts";
import { type KeyPath, valueAt } from "../../src/setup/types/keyPath.ts";
import { gapsAt } from "../../src/studies/reports/gapsAt.ts";
import { solvePose } from "../../src/suspension/solvePose.ts";
import { exampleText } from "./exampleText.ts";

function opened() {
  const store = createWorkbenchStore(exampleText, "test.json");
  const truck = () => store.getState().truck!;
  const put = (path: KeyPath, value: unknown) => {
    store.getState().editField(path, value);
    expect(store.getState().issues).toEqual([]);
    expect(store.getState().drafts).toEqual({});
  };
  const typed = (path: KeyPath) => valueAt(store.getState().document, path);
  return { store, truck, put, typed };
}

describe("giving a thing in another way", () => {
  it("leaves the wheel's offset as it was, there and back", () => {
    const { truck, put, typed } = opened();
    const { offset } = truck().setup.wheel;
    put(["wheel"], wheelGivenBy("offset", typed(["wheel"]), truck().setup.wheel, "in"));
    expect(typed(["wheel"])).not.toHaveProperty("backspacing");
    expect(truck().setup.wheel.offset).toBeCloseTo(offset, 6);
    put(["wheel"], wheelGivenBy("backspacing", typed(["wheel"]), truck().setup.wheel, "in"));
    expect(typed(["wheel"])).toEqual({ rimDiameter: 15, rimWidth: 8, backspacing: "4 1/2" });
  });

  it("keeps the tire's size within what the way can say", () => {
    const { truck, put, typed } = opened();
    const was = truck().model.tire;
    const give = (way: "size" | "diameter" | "profile") =>
      put(["tire"], tireGivenBy(way, typed(["tire"]), truck().model.tire, truck().setup.wheel, "in"));
    give("profile");
    expect(truck().model.tire.freeRadius).toBeGreaterThanOrEqual(was.freeRadius - 1e-9);
    expect(truck().model.tire.freeRadius).toBeLessThan(was.freeRadius + 0.02);
    give("diameter");
    // A sixteenth of an inch of diameter, rounded either way.
    expect(Math.abs(truck().model.tire.freeRadius - was.freeRadius)).toBeLessThan(25.4 / 64 + 0.02);
    give("size");
    expect(typed(["tire", "size"])).toMatch(/^P2\d5\/\d[05]R15$/);
  });

  it("starts the other steering as one that goes together, with the same inner ends", () => {
    const { truck, put, typed } = opened();
    const { innerEnd } = truck().setup.truck.steering;
    put(["truck", "steering"], steeringOfType("pitman", truck().setup.truck.steering, "in"));
    expect(truck().setup.truck.steering.type).toBe("pitman");
    for (const i of [0, 1, 2]) {
      // Rounded to the sixteenth.
      expect(Math.abs(truck().setup.truck.steering.innerEnd[i]! - innerEnd[i]!)).toBeLessThanOrEqual(
        25.4 / 32,
      );
    }
    expect(solvePose(truck().model.frontEnd, 0, 1).ok).toBe(true);
    put(["truck", "steering"], steeringOfType("rack", truck().setup.truck.steering, "in"));
    expect(typed(["truck", "steering", "stroke"])).toBe("2 3/4");
  });
});

describe("a new body part", () => {
  it("has a name of its own and clears the tire straight ahead where the truck was measured", () => {
    const { store, truck, put, typed } = opened();
    const names = ["arch", "box", "lip", "rail"];
    const parts = [newPath(truck(), names, "in"), newBox(truck(), names, "in")];
    put(["truck", "body"], [...(typed(["truck", "body"]) as unknown[]), ...parts]);
    const pose = solvePose(truck().model.frontEnd, 0, 0);
    expect(pose.ok).toBe(true);
    const gaps = pose.ok ? gapsAt(truck().model, pose) : [];
    for (const name of ["arch 2", "box 2"]) {
      const found = gaps.filter((gap) => gap.part === name);
      expect(found).toHaveLength(2);
      for (const { gap } of found) expect(gap).toBeGreaterThan(store.getState().truck!.setup.allowance);
    }
  });

  it("starts a caliper inside the barrel", () => {
    const { truck, put } = opened();
    put(["hardware"], { caliper: startCaliper(truck().setup, "in") });
    const pose = solvePose(truck().model.frontEnd, 0, 0);
    const gaps = pose.ok ? gapsAt(truck().model, pose) : [];
    const barrel = gaps.filter((gap) => gap.part === "caliper to barrel");
    expect(barrel).toHaveLength(2);
    for (const { gap } of barrel) expect(gap).toBeGreaterThan(0);
  });
});

describe("typing that pauses", () => {
  it("is one step, unless something else was done in between", () => {
    const { store, typed } = opened();
    const { beginGesture, resumeGesture, endGesture, editField, undo } = store.getState();
    const hubFace = ["knuckle", "hubFace"];
    const steps = () => store.temporal.getState().pastStates.length;
    beginGesture();
    editField(hubFace, "5");
    endGesture();
    resumeGesture();
    editField(hubFace, "5 1/2");
    endGesture();
    expect(steps()).toBe(1);
    undo();
    expect(typed(hubFace)).toBe("6 1/8");
    // What was undone is no gesture to go on with.
    resumeGesture();
    editField(hubFace, "5");
    endGesture();
    expect(steps()).toBe(1);
    editField(["knuckle", "pinAngle"], "9");
    resumeGesture();
    editField(hubFace, "4");
    endGesture();
    expect(steps()).toBe(3);
    undo();
    expect([typed(hubFace), typed(["knuckle", "pinAngle"])]).toEqual([5, 9]);
  });

  it("goes back to before its first key when it is called off after a pause", () => {
    const { store, typed } = opened();
    const { beginGesture, resumeGesture, endGesture, cancelGesture, editField } = store.getState();
    beginGesture();
    editField(["knuckle", "hubFace"], "5");
    endGesture();
    resumeGesture();
    editField(["knuckle", "hubFace"], "4");
    cancelGesture();
    expect(typed(["knuckle", "hubFace"])).toBe("6 1/8");
    expect(store.temporal.getState().pastStates).toEqual([]);
  });
});
