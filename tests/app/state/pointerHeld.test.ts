import { describe, expect, it, onTestFinished } from "vitest";
import { followPointers, pointerHeld, whenLetGo } from "../../../src/app/state/pointerHeld.ts";

function pointers() {
  const page = new EventTarget();
  const stop = followPointers(page);
  onTestFinished(() => {
    stop();
    pointerHeld.setState({ isHeld: false });
  });
  return (type: string, pointerId = 1, button = 0) =>
    page.dispatchEvent(Object.assign(new Event(type), { pointerId, button }));
}

describe("what waits for a pointer to be let go", () => {
  it("is done at once where none is held", () => {
    pointers();
    let isDone = false;
    whenLetGo(() => {
      isDone = true;
    });
    expect(isDone).toBe(true);
  });

  it.each(["pointerup", "pointercancel"])("waits for the last of several, and is done once: %s", (end) => {
    const tell = pointers();
    tell("pointerdown", 1);
    tell("pointerdown", 2);
    let done = 0;
    whenLetGo(() => {
      done += 1;
    });
    tell(end, 1);
    expect(done).toBe(0);
    tell(end, 2);
    tell("pointerdown", 1);
    tell(end, 1);
    expect(done).toBe(1);
  });

  it("does not wait for a menu's button", () => {
    const tell = pointers();
    tell("pointerdown", 1, 2);
    expect(pointerHeld.getState().isHeld).toBe(false);
  });
});
