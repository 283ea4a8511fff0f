import { describe, expect, it } from "vitest";
import type { FieldWindow, Fit, SetBy } from "../../../src/studies/window/windowTypes.ts";
import { tireSentence } from "../../../src/studies/wording/comparedNumbers.ts";
import { windowSentences } from "../../../src/studies/wording/windowWords.ts";
import { windowSubject } from "../window/windowSubject.ts";

const { subject, model } = windowSubject("half-ton-on-air.json");

const RANGE: SetBy = { kind: "range" };
const SETUP: SetBy = { kind: "setup" };
const LIMIT: SetBy = { kind: "limit", name: "bump stop" };
const PART: SetBy = { kind: "part", part: "fender lip", side: "left", travel: 80, steer: 0.5, gap: 6 };

/** A window of some fits, mm. */
function window(...fits: readonly Fit[]): FieldWindow {
  return {
    field: "knuckle.hubFace",
    kind: "length",
    now: 160,
    from: 100,
    to: 200,
    tolerance: 0.1,
    between: { rank: "proven" },
    fits,
    closedBy: [],
    opens: null,
  };
}

/** What is told of a window of one fit, mm. */
function told(fit: Fit, units: "in" | "mm" = "in"): readonly string[] {
  return windowSentences(window(fit), { model, format: { units, fraction: 16 }, document: subject.document });
}

it("a tire's size is told with what it measures on the rim, whose width spreads it", () => {
  // 235 mm and 0.4 of what the rim is wider than 0.7 of that (UN R30, par. 6.1.1.1): 250.5 mm on 8 in.
  expect(tireSentence(model, { units: "mm" })).toMatch(
    /^On this rim, 203.2 mm wide: section width 250.5 mm, /,
  );
});

describe("the sentences of a window", () => {
  it("call the gap of an empty one that of the best value, unless no value moves it", () => {
    const by = { ...PART, gap: -3.2 } as Extract<SetBy, { kind: "part" }>;
    const closed = (isUnmoved: boolean) =>
      windowSentences(
        { ...window(), closedBy: [{ by, isUnmoved }] },
        { model, format: { units: "in", fraction: 16 }, document: subject.document },
      )[1];
    expect(closed(false)).toMatch(/, still rubbing by 1\/8 in at the best value\.$/);
    expect(closed(true)).toMatch(/, rubbing by 1\/8 in; the hub-face distance does not change that/);
  });

  it("say that something is too near beyond an end only where something sets it", () => {
    const proven = (fromSetBy: SetBy, toSetBy: SetBy) =>
      told({ from: 120, to: 170, fromSetBy, toSetBy }).at(-1);
    const start = "Proven at every value between the ends; each end is checked";
    const by = `${start}; 0.0039 in beyond`;
    expect(proven(PART, PART)).toBe(`${by} each, something is too near.`);
    expect(proven(RANGE, { kind: "unfinished" })).toBe(`${start}.`);
    expect(proven(RANGE, PART)).toBe(`${by} an end that is set by something, something is too near.`);
    expect(proven(SETUP, RANGE)).toBe(`${start}.`);
    expect(proven(SETUP, PART)).toBe(`${by} an end that is set by a part or a limit, something is too near.`);
    expect(proven(LIMIT, PART)).toBe(`${by} each, the value does not fit.`);
  });

  it("name at an end of the gap to keep that gap, not the setup's", () => {
    const of = { ...window({ from: 1, to: 4.8, fromSetBy: RANGE, toSetBy: PART }), field: "allowance" };
    const said = windowSentences(of, { model, format: { units: "mm" }, document: subject.document });
    expect(said[2]).toMatch(/^Not more than 4\.8 mm: the tire comes nearer than 4\.8 mm to the /);
  });

  it("tell an end of what a setup may hold as that, and not as room beyond", () => {
    const [fits, least, most] = told({ from: 120, to: 170, fromSetBy: SETUP, toSetBy: PART });
    expect(fits).toMatch(/^Hub-face distance fits from 4 3\/4 in to 6 11\/16 in; /);
    expect(least).toBe("Not less than 4 3/4 in: the setup allows no less.");
    expect(most).toMatch(/^Not more than /);
    const both = told({ from: 120, to: 170, fromSetBy: RANGE, toSetBy: SETUP });
    expect(both[0]).toMatch(/ fits at least from /);
    expect(both.slice(1, 3)).toEqual([
      "Looked at no farther than 4 3/4 in: less may fit too.",
      "Not more than 6 11/16 in: the setup allows no more.",
    ]);
  });

  it("call no value one that does not fit before anything is known, and the own one fitting where a check proves it", () => {
    const empty: FieldWindow = { ...window(), fits: [], cutShort: true };
    const speech = { model, format: { units: "in", fraction: 16 }, document: subject.document } as const;
    expect(windowSentences(empty, speech)).toEqual(["Hub-face distance: what fits is not known yet."]);
    expect(windowSentences(empty, speech, true)).toEqual([
      "Hub-face distance: yours, 6 5/16 in, fits; how far it can go is not known yet.",
    ]);
    const closed = { ...empty, closedBy: [{ by: LIMIT, isUnmoved: false }] } as FieldWindow;
    expect(windowSentences(closed, speech)[0]).toMatch(/no value .* is known to fit so far/);
  });

  it("tell a window narrower than a sixteenth finer, on the safe side, never from more to less", () => {
    const [fits, least, most] = told({ from: 139.9, to: 140.5, fromSetBy: PART, toSetBy: RANGE });
    expect(fits).toMatch(/^Hub-face distance fits at least from 5\.5079 in to 5\.5314 in; /);
    expect(least).toMatch(/^Not less than 5\.5079 in: /);
    expect(most).toMatch(/^Looked at no farther than 5\.5314 in: more may fit too/);
    const [one] = told({ from: 139.9, to: 139.9, fromSetBy: PART, toSetBy: RANGE });
    expect(one).toMatch(/fits at least from 5\.5079 in to 5\.5079 in/);
    const [mm] = told({ from: 139.92, to: 139.97, fromSetBy: PART, toSetBy: RANGE }, "mm");
    expect(mm).toMatch(/fits at least from 139\.9200 mm to 139\.9700 mm/);
  });
});
