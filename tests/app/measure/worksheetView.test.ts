import { describe, expect, it } from "vitest";
import {
  comesBack,
  nextLine,
  openLine,
  shownLine,
  worksheetView,
} from "../../../src/app/measure/worksheet/worksheetView.ts";
import { workbench } from "../../../src/app/state/workbench.ts";
import type { LineState } from "../../../src/setup/worksheet/worksheetState.ts";

const states = [true, false, true, false].map(
  (isRead, i): LineState => ({
    line: null,
    ask: null,
    gauge: null,
    path: ["readings", i, "is"],
    isRead,
    again: 0,
  }),
);

describe("the reading shown", () => {
  it("is the one asked for, else the first not read, else the last", () => {
    expect(shownLine(states, "readings[2].is")).toBe(2);
    expect(shownLine(states, null)).toBe(1);
    expect(shownLine(states, "readings[9].is")).toBe(1);
    const read = states.map((state) => ({ ...state, isRead: true }));
    expect(shownLine(read, null)).toBe(3);
  });

  it("goes on one by one, skips nothing by itself, and after the last comes back to what was skipped", () => {
    expect([0, 1, 2, 3].map((from) => nextLine(states, from, "next"))).toEqual([1, 2, 3, 1]);
    expect([0, 1, 3].map((from) => nextLine(states, from, "previous"))).toEqual([0, 0, 2]);
    const read = states.map((state) => ({ ...state, isRead: true }));
    expect(nextLine(read, 3, "next")).toBe(3);
  });

  it("comes back from one looked at again to where it was left, and on no other truck", () => {
    expect([0, 1, 2, 3].map((to) => comesBack(states, to, 3))).toEqual([
      "readings[3].is",
      null,
      "readings[3].is",
      null,
    ]);
    openLine(["readings", 2, "is"], "readings[3].is");
    workbench.getState().editField(["name"], "Same truck");
    expect(worksheetView.getState().from).toBe("readings[3].is");
    workbench.getState().newTruck("in");
    expect(worksheetView.getState().from).toBeNull();
    workbench.setState(workbench.getInitialState());
    workbench.temporal.getState().clear();
    worksheetView.setState(worksheetView.getInitialState());
  });
});
