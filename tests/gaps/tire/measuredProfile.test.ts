import { describe, expect, it, test } from "vitest";
import { type MeasuredPoint, measuredProfileIssue } from "../../../src/gaps/tire/measuredProfile.ts";

const BARREL = 170;
const tape: MeasuredPoint[] = [
  [-100, 190],
  [-122, 270],
  [-95, 352],
  [0, 356],
  [95, 352],
  [122, 270],
  [100, 190],
];
const issue = (profile: readonly MeasuredPoint[]) => measuredProfileIssue(profile, BARREL);

describe("profiles that enclose a ring", () => {
  test.each<[string, MeasuredPoint[]]>([
    ["a tire off the tape", tape],
    [
      "one straight line across",
      [
        [-100, 300],
        [100, 300],
      ],
    ],
    [
      "beads on the barrel itself",
      [
        [-100, 170],
        [-100, 350],
        [100, 350],
        [100, 170],
      ],
    ],
    [
      "a point given twice",
      [
        [-100, 190],
        [-100, 350],
        [-100, 350],
        [100, 350],
        [100, 190],
      ],
    ],
    [
      "a groove in the tread",
      [
        [-100, 190],
        [-100, 350],
        [-10, 350],
        [0, 340],
        [10, 350],
        [100, 350],
        [100, 190],
      ],
    ],
    [
      "a sidewall that hangs out past the bead and back under",
      [
        [-80, 200],
        [-120, 190],
        [-120, 350],
        [120, 350],
        [120, 190],
        [80, 200],
      ],
    ],
    [
      "one-sided",
      [
        [20, 190],
        [20, 350],
        [220, 350],
        [220, 190],
      ],
    ],
  ])("%s", (_, profile) => {
    expect(issue(profile)).toBeNull();
  });
});

describe("profiles that do not", () => {
  const swapped = [tape[0]!, tape[1]!, tape[4]!, tape[3]!, tape[2]!, tape[5]!, tape[6]!];
  test.each<[string, MeasuredPoint[], string, RegExp]>([
    ["two points swapped", swapped, "tire.profile", /crosses/],
    ["outboard bead first", [...tape].reverse(), "tire.profile", /inboard bead/],
    ["one point", [[0, 300]], "tire.profile", /two points/],
    ["none", [], "tire.profile", /two points/],
    [
      "a point inside the barrel",
      [
        [-100, 190],
        [0, 160],
        [100, 190],
      ],
      "tire.profile[1]",
      /barrel/,
    ],
    ["r and x swapped", tape.map(([x, r]): MeasuredPoint => [r, x]), "tire.profile[0]", /barrel/],
    [
      "no number",
      [
        [-100, 190],
        [0, Number.NaN],
        [100, 190],
      ],
      "tire.profile[1]",
      /lengths/,
    ],
    [
      "no end",
      [
        [-100, 190],
        [Number.POSITIVE_INFINITY, 300],
        [100, 190],
      ],
      "tire.profile[1]",
      /lengths/,
    ],
    [
      "a spike that doubles back",
      [
        [-100, 190],
        [-100, 350],
        [0, 350],
        [-50, 350],
        [-50, 340],
        [100, 190],
      ],
      "tire.profile",
      /crosses/,
    ],
    [
      "a lip through its own closing line",
      [
        [-100, 250],
        [-150, 200],
        [-50, 200],
        [-50, 350],
        [100, 350],
        [100, 190],
      ],
      "tire.profile",
      /crosses/,
    ],
    [
      "a tread that dips to the barrel line",
      [
        [-100, 190],
        [0, 170],
        [100, 190],
      ],
      "tire.profile",
      /touches/,
    ],
  ])("%s", (_, profile, key, mend) => {
    expect(issue(profile)).toEqual({ key, mend: expect.stringMatching(mend) });
  });

  it("more points than anyone measures", () => {
    const profile = Array.from({ length: 1001 }, (_, i): MeasuredPoint => [i, 300]);
    expect(issue(profile)?.mend).toMatch(/1000/);
    expect(issue(profile.slice(1))).toBeNull();
  });

  it("says which points are near the crossing", () => {
    expect(issue(swapped)?.mend).toMatch(/points 1 and 4/);
  });
});
