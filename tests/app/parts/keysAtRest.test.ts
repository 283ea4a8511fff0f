import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { noteKey, whenKeysRest } from "../../../src/app/parts/keysAtRest.ts";

beforeEach(() => {
  vi.useFakeTimers();
  // On this clock: a key that another file noted stands on another.
  noteKey();
  vi.advanceTimersByTime(10_000);
});
afterEach(() => {
  vi.useRealTimers();
});

test("runs at once where no key has come for a while", () => {
  const run = vi.fn();
  whenKeysRest(run);
  expect(run).toHaveBeenCalledOnce();
});

test("waits for the last of the keys, and runs once", () => {
  const run = vi.fn();
  noteKey();
  whenKeysRest(run);
  for (let key = 0; key < 20; key++) {
    vi.advanceTimersByTime(180);
    noteKey();
  }
  vi.advanceTimersByTime(499);
  expect(run).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(run).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(5000);
  expect(run).toHaveBeenCalledOnce();
});

test("does not run when it is called off", () => {
  const run = vi.fn();
  noteKey();
  whenKeysRest(run)();
  vi.advanceTimersByTime(5000);
  expect(run).not.toHaveBeenCalled();
});
