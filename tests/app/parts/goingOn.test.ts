import { describe, expect, it } from "vitest";
import { goingOn } from "../../../src/app/parts/focusOn.ts";

/** Buttons of notices from the top, each by its notice and what it says. */
const NOTICES = ["a Copy", "a Close", "b Stop", "c Use it now", "d Close"] as const;
const from = (pressed: (typeof NOTICES)[number]) =>
  goingOn(NOTICES, pressed, (one) => one !== pressed && one.slice(1) === pressed.slice(1));

describe("the keyboard", () => {
  it("goes on with the next button that does the same, past those that do something else", () => {
    expect(from("a Close")).toBe("d Close");
    expect(goingOn([1, 2, 3], 1, () => true)).toBe(2);
    expect(goingOn([1, 2, 3], 2, () => true)).toBe(3);
  });

  it("goes back to the one before from the last", () => {
    expect(from("d Close")).toBe("a Close");
    expect(goingOn([1, 2, 3], 3, () => true)).toBe(2);
  });

  it("stays out of the list where there is no other", () => expect(from("b Stop")).toBeNull());
});
