import { afterEach, describe, expect, it } from "vitest";
import { workedOn, workOn } from "../../../../src/app/choose/compare/workedOn.ts";
import { dropTyped, type } from "../../../../src/app/state/typing.ts";

afterEach(() => {
  dropTyped();
  workedOn.setState({ key: null });
});

describe("the field that was worked on last", () => {
  it("is the one asked about, or the one typed into since, by the key it is asked for by", () => {
    expect(workedOn.getState().key).toBeNull();
    workOn("knuckle.pinAngle");
    expect(workedOn.getState().key).toBe("knuckle.pinAngle");
    const path = ["truck", "lowerArm", "ballJoint", 2];
    type({ path, text: "8.5", isOptional: false }, () => {});
    expect(workedOn.getState().key).toBe("truck.lowerArm.ballJoint[2]");
    dropTyped();
    expect(workedOn.getState().key).toBe("truck.lowerArm.ballJoint[2]");
    workOn("knuckle.span");
    expect(workedOn.getState().key).toBe("knuckle.span");
  });
});
