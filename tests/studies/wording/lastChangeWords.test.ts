import { describe, expect, it } from "vitest";
import { wayEnds } from "../../../src/studies/map/wayEnds.ts";
import { Budget } from "../../../src/studies/numeric/budget.ts";
import { checkClearance } from "../../../src/studies/reports/check.ts";
import { changeTold, type KnownTruck } from "../../../src/studies/wording/lastChangeWords.ts";
import { formatOf } from "../../../src/studies/wording/lengths.ts";
import { demoModel, lipAlone } from "../demoModel.ts";

function knownTruck(knuckle: Record<string, unknown> = {}): KnownTruck {
  const model = demoModel({ ...lipAlone(), knuckle });
  return { model, report: checkClearance(model), ways: wayEnds(model, Budget.endless()) };
}

const wide = knownTruck();
const narrow = knownTruck({ hubFace: "5 5/8" });
const format = formatOf(wide.model.setup);

describe("what a change did to the main numbers", () => {
  it("says the worst gap before and now, then what else reads otherwise", () => {
    expect(changeTold(wide, narrow, format)).toMatchInlineSnapshot(`
      {
        "before": "was 3/16 in of rub",
        "others": [
          "lowest at full lock was 3 3/16 in bump, now full bump",
          "steer at “aired out” was 12°, now lock to lock",
          "scrub radius was 4 9/16 in, now 3 7/8 in",
        ],
        "worst": "worst gap was 3/16 in of rub, now 1/4 in",
      }
    `);
  });

  it("says it the other way round when the change is undone", () => {
    const [done, undone] = [changeTold(wide, narrow, format), changeTold(narrow, wide, format)];
    const turned = (text: string) => text.replace(/was (.*), now (.*)/, "was $2, now $1");
    expect(undone.worst).toBe(turned(done.worst));
    expect(undone.others).toEqual(done.others.map(turned));
  });

  it("says in decimals what a tape reads alike, and that what did not change is as before", () => {
    const hair = knownTruck({ hubFace: "6.32 in" });
    expect(changeTold(wide, hair, format).worst).toMatch(/^worst gap was \d?\.?\d+ in.*, now \d?\.?\d+ in/);
    expect(changeTold(wide, knownTruck(), format)).toEqual({
      worst: changeTold(narrow, wide, format).worst.replace(/was .*, now/, "still"),
      before: "as before",
      others: [],
    });
  });

  it("says nothing of a gap before that a check cut short did not prove, and that one now is so far", () => {
    const cut = ({ report, ...known }: KnownTruck): KnownTruck => ({
      ...known,
      report: { ...report!, cutShort: true },
    });
    expect(changeTold(cut(narrow), wide, format)).toMatchObject({
      worst: "worst gap now 3/16 in of rub",
      before: "",
    });
    // A rub that was found is there.
    expect(changeTold(cut(wide), cut(narrow), format).worst).toBe(
      "worst gap was 3/16 in of rub, now so far 1/4 in",
    );
  });

  it("leaves out ways that are not known", () => {
    const { others } = changeTold({ ...wide, ways: null }, narrow, format);
    expect(others.join()).toMatch(/^scrub radius was [^;]+, now [^;,]+$/);
  });
});
