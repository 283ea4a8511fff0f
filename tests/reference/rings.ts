import { tireProfile } from "../../src/gaps/tire/tireProfile.ts";
import type { RingCase } from "./referenceRing.ts";
import type { Outline } from "./sectionDistance.ts";

function generated(): RingCase {
  const made = tireProfile({
    diameter: 711,
    sectionWidth: 240,
    rimDiameter: 381,
    rimWidth: 203.2,
    flange: { width: 12.7, height: 17.5 },
  });
  if (!made.ok) throw new TypeError(`the test's own tire: ${made.mend}`);
  const profile: [number, number][] = [];
  for (let i = 0; i < made.profile.length; i += 2) profile.push([made.profile[i]!, made.profile[i + 1]!]);
  return { name: "generated profile", profile, barrelRadius: 174.6 };
}

/** Off the tape: uneven sides, a dish behind the outboard flange, a deep groove, a raised rib, a point given twice. */
const measuredProfile: Outline = [
  [-109, 196],
  [-118, 214],
  [-104, 226],
  [-131, 281],
  [-119, 331],
  [-88, 352],
  [-22, 355],
  [-15, 338],
  [-9, 338],
  [-9, 338],
  [-3, 357],
  [61, 356],
  [92, 349],
  [121, 322],
  [127, 279],
  [123, 271],
  [129, 263],
  [112, 221],
  [126, 207],
  [117, 193],
];

const measured: RingCase = { name: "measured profile", profile: measuredProfile, barrelRadius: 171.5 };

/** Section with all of it outboard of the wheel's center plane, beads on the barrel. */
const oneSided: RingCase = {
  name: "one-sided profile",
  profile: [
    [20, 170],
    [20, 330],
    [60, 352],
    [190, 350],
    [231, 170],
  ],
  barrelRadius: 170,
};

/** Convex, not convex, and off center. */
export const ringCases: readonly RingCase[] = [generated(), measured, oneSided];

/** A cylinder with rounded shoulders of radius r: corners on the arcs, `perShoulder` chords each. */
export function roundedCylinder(
  R: number,
  W: number,
  r: number,
  barrelRadius: number,
  perShoulder: number,
): RingCase {
  const outboard: [number, number][] = [[W / 2, barrelRadius]];
  for (let i = 0; i <= perShoulder; i++) {
    const angle = (Math.PI / 2) * (i / perShoulder);
    outboard.push([W / 2 - r + r * Math.cos(angle), R - r + r * Math.sin(angle)]);
  }
  const inboard = outboard.map(([x, radius]): [number, number] => [-x, radius]);
  return { name: `R ${R} W ${W} r ${r}`, profile: [...inboard, ...outboard.reverse()], barrelRadius };
}

/** The chords of `roundedCylinder` lie inside the arcs by at most this, mm. */
export function chordError(r: number, perShoulder: number): number {
  return r * (1 - Math.cos(Math.PI / (4 * perShoulder)));
}
