import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { noteKey } from "../../../src/app/parts/keysAtRest.ts";
import { PatientResize } from "../../../src/app/stage/patientResize.ts";

let sizeChanges: () => void = () => undefined;

class FakeObserver {
  constructor(tell: ResizeObserverCallback) {
    sizeChanges = () => tell([], this);
  }
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.advanceTimersByTime(10_000);
  vi.stubGlobal("ResizeObserver", FakeObserver);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("the first size is told at once, a later one when nobody types, many of them once", () => {
  const tell = vi.fn();
  new PatientResize(tell);
  noteKey();
  sizeChanges();
  expect(tell).toHaveBeenCalledTimes(1);
  sizeChanges();
  vi.advanceTimersByTime(300);
  noteKey();
  sizeChanges();
  vi.advanceTimersByTime(300);
  expect(tell).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(300);
  expect(tell).toHaveBeenCalledTimes(2);
  sizeChanges();
  expect(tell).toHaveBeenCalledTimes(3);
});

test("tells nothing more once it is disconnected", () => {
  const tell = vi.fn();
  const patient = new PatientResize(tell);
  sizeChanges();
  noteKey();
  sizeChanges();
  patient.disconnect();
  vi.advanceTimersByTime(5000);
  expect(tell).toHaveBeenCalledTimes(1);
});
