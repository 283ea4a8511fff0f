import { expect, it } from "vitest";
import { fieldAt, setupFields } from "../../../src/setup/fieldCatalogue.ts";
import { zeroOf } from "../../../src/setup/fields/zeroOf.ts";
import type { KeyPath } from "../../../src/setup/types/keyPath.ts";

const at = (document: unknown, ...path: KeyPath) => {
  const field = fieldAt(path, document);
  if (field === null) throw new Error(`no field ${path.join(".")}`);
  return zeroOf(field, path, document);
};

it("tells of every point of a setup where it is counted from", () => {
  const points = setupFields().filter(({ kind }) => kind === "point");
  const told = points.map((field) => [field.pattern.join("."), zeroOf(field, field.pattern, {})] as const);
  expect(told.length).toBeGreaterThan(25);
  // Along a stick of its own, drawn beside the reading.
  expect(told.filter(([, zero]) => zero === null).map(([keys]) => keys)).toEqual(["readings.*.stations.*"]);
  const of = (zero: string) => told.filter(([, one]) => one === zero).map(([keys]) => keys);
  expect(of("knuckle")).toEqual([
    "knuckle.steeringArm",
    "build.joints.*.at",
    "build.plates.*.at",
    "hardware.caliper.min",
    "hardware.caliper.max",
    "order.base.steeringArm",
    "order.steeringArm.tieRodEnd",
  ]);
  expect(of("seat")).toEqual([
    "order.brake.caliper.min",
    "order.brake.caliper.max",
    "order.brake.bracketHoles.*",
  ]);
});

it("goes by the field beside it where that decides", () => {
  expect(at({ hardware: { caliper: { frame: "hub" } } }, "hardware", "caliper", "min")).toBe("hub");
  expect(at({ hardware: { caliper: {} } }, "hardware", "caliper", "min")).toBe("knuckle");
  expect(at({ limits: { shock: { on: "knuckle" } } }, "limits", "shock", "lowerMount")).toBe("knuckle");
  expect(at({ limits: { shock: {} } }, "limits", "shock", "lowerMount")).toBe("truck");
});

it("knows a mesh file's own zero from the truck's", () => {
  const document = { truck: { body: [{ kind: "mesh" }] } };
  expect(at(document, "truck", "body", 0, "place", "from", 0)).toBe("mesh");
  expect(at(document, "truck", "body", 0, "place", "to", 0)).toBe("truck");
  expect(at(document, "truck", "body", 0, "place", "move")).toBe("truck");
});

it("has nothing to say of a direction or a length", () => {
  expect(at({ limits: {} }, "limits", "upperBallJoint", "stud")).toBeNull();
  expect(at({ knuckle: {} }, "knuckle", "hubFace")).toBeNull();
});
