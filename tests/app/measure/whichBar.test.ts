import { describe, expect, it } from "vitest";
import { awayKey, type Wrong, whichBar } from "../../../src/app/measure/whichBar.ts";
import { ownTruckDocument } from "../../../src/studies/worksheet/ownTruck.ts";

const document = ownTruckDocument({ units: "in", steering: "rack", isFull: false });
const issue = (key: string, value = "40") => ({ file: "truck.json", key, value, mend: "must be less" });
const SPAN = issue("knuckle.span");
const DRAFT = issue("tire.size", "P235/7");
const CALM: Wrong = {
  issues: [],
  unread: [],
  document,
  inTheWay: null,
  isAtWorksheet: false,
  away: null,
};

describe("what is wrong with a truck on the assumed layout", () => {
  it("is told by its field where that does not read: no reading is to blame", () => {
    expect(whichBar({ ...CALM, unread: [DRAFT] })).toBe("issues");
    expect(whichBar({ ...CALM, unread: [DRAFT], issues: [SPAN], inTheWay: [2] })).toBe("issues");
    expect(whichBar(CALM)).toBeNull();
  });

  it("is told by its field where no reading is in the way, and until they are looked through", () => {
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: [] })).toBe("issues");
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: null })).toBe("issues");
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: [], isAtWorksheet: true })).toBe("issues");
  });

  it("is told by the readings in the way, and at the worksheet by nothing else while they are looked through", () => {
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: [2] })).toBe("readings");
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: null, isAtWorksheet: true })).toBeNull();
    expect(whichBar({ ...CALM, issues: [issue("readings[1].is")], isAtWorksheet: true })).toBe("issues");
    const other = { ...document, fromExample: undefined };
    expect(whichBar({ ...CALM, issues: [SPAN], document: other, inTheWay: null, isAtWorksheet: true })).toBe(
      "issues",
    );
  });

  it("stays away once it was put away, until something else is wrong", () => {
    const away = awayKey(SPAN);
    expect(whichBar({ ...CALM, issues: [SPAN], inTheWay: [2], away })).toBeNull();
    const other = issue("knuckle.span", "41");
    expect(whichBar({ ...CALM, issues: [other], inTheWay: [2], away })).toBe("readings");
    expect(whichBar({ ...CALM, issues: [SPAN], unread: [DRAFT], inTheWay: [2], away })).toBe("issues");
  });
});
