import type { UnusualCheck } from "../../../src/setup/types/unusualChecks.ts";
import { type Change, changed, compact, halfTon, onOrder, scaled } from "./trucks.ts";

/** A truck that a check finds unusual, and one just inside what is usual. */
export interface Row {
  readonly check: UnusualCheck;
  readonly what: string;
  readonly trips: object;
  readonly inside: object;
}

const row = (
  check: UnusualCheck,
  what: string,
  trips: readonly Change[],
  inside: readonly Change[],
): Row => ({ check, what, trips: changed(halfTon, ...trips), inside: changed(halfTon, ...inside) });

const one = (check: UnusualCheck, path: Change[0], trips: unknown, inside: unknown): Row =>
  row(check, `${path.join(".")} ${JSON.stringify(trips)}`, [[path, trips]], [[path, inside]]);

/** The same of the knuckle on order. */
const built = (check: UnusualCheck, path: Change[0], trips: unknown, inside: unknown): Row => ({
  ...{ check, what: `${path.join(".")} ${JSON.stringify(trips)}` },
  ...{ trips: changed(onOrder, [path, trips]), inside: changed(onOrder, [path, inside]) },
});

const cases = (up: number) => [{ name: "bump", kind: "multiples", up }];

const lip = (point: number, axis: number) => ["truck", "body", 0, "points", point, axis] as const;
const rail = (end: "min" | "max") => ["truck", "body", 2, end] as const;
const arm = (name: "upperArm" | "lowerArm", point: string) => ["truck", name, point] as const;
const lipAt = (z: number): readonly Change[] => [4, 5, 6].map((point) => [lip(point, 2), z]);

/** A mm file whose bare numbers are inches, but for the tire, which is as it is sold. */
const inchesInMm = changed(scaled(compact, 1 / 25.4), [["truck", "body"], []]);
const millimetersInIn = changed(
  compact,
  [["units"], "in"],
  ...["pinLead", "hubFace"].map((key): Change => [["knuckle", key], key === "hubFace" ? 138 : 0]),
  [["wheel", "offset"], "10 mm"],
  [["tire", "loadedRadius"], "292 mm"],
);

export const ROWS: readonly Row[] = [
  { check: "fileUnits", what: "inches in a mm file", trips: inchesInMm, inside: compact },
  { check: "fileUnits", what: "mm in an inch file", trips: millimetersInIn, inside: halfTon },
  one("leftRight", lip(4, 1), "-36 1/16", "36 1/16"),
  one("leftRight", arm("lowerArm", "frontPivot"), ["7 3/4", "-10 5/8", "9 3/8"], ["7 3/4", "-1/2", "9 3/8"]),
  one(
    "leftRight",
    ["truck", "steering", "innerEnd"],
    ["-6 3/8", "-11 3/4", "10 1/8"],
    ["-6 3/8", "-1/2", "10 1/8"],
  ),
  row(
    "leftRight",
    "a frame rail of both sides, typed on the right",
    [
      [rail("min"), [-32, -15.25, 15.5]],
      [rail("max"), [32, -12.25, 22]],
    ],
    [
      [rail("min"), [-32, -15.25, 15.5]],
      [rail("max"), [32, 15.25, 22]],
    ],
  ),
  one("tenTimes", lip(5, 1), 361, 40),
  one("tenTimes", lip(5, 1), "3 5/8", 30),
  one("tenTimes", lip(4, 2), 297, 29),
  one("tenTimes", arm("lowerArm", "rearPivot"), ["-7 1/4", "103 3/4", "9 5/8"], ["-7 1/4", "14", "9 5/8"]),
  one("tenTimes", arm("lowerArm", "rearPivot"), ["-7 1/4", "1 1/32", "9 5/8"], ["-7 1/4", "6", "9 5/8"]),
  one("farAway", rail("max"), [32, "15 1/4", 220], [32, "15 1/4", 110]),
  one("farAway", rail("min"), [-320, "12 1/4", "15 1/2"], [-260, "12 1/4", "15 1/2"]),
  one("size", ["knuckle", "pinHeight"], 53.75, 7),
  one("size", ["knuckle", "pinAngle"], 27, 10),
  one("size", ["truck", "steering", "stroke"], "28 3/4", 4),
  one("size", ["travel", "droop"], -37.5, -12),
  one("size", ["allowance"], 6, 3),
  one("hubFace", ["knuckle", "hubFace"], 60, 10),
  one("backspacing", ["wheel", "backspacing"], 15, 9),
  one("backspacing", ["wheel", "backspacing"], 0.25, 0.5),
  one("loadedRadius", ["tire", "loadedRadius"], 11.5, 12),
  built("buildSize", ["jig", "halfLength"], "254 in", 12),
  built("buildSize", ["order", "brake", "rotorThickness"], 12.5, 0.75),
  built("buildSize", ["build", "members", 0, "wall"], 0.8, 0.6),
  built("buildSize", ["build", "members", 0, "wall"], 0.0188, 0.065),
  built("buildSize", ["build", "members", 2, "diameter"], "17.5", 2),
  built("buildSize", ["build", "studs", 0, "diameter"], 7.9, 0.9),
  built("buildSize", ["build", "plates", 1, "thickness"], 9.5, 0.5),
  built("buildSize", ["build", "welds", 0, "leg"], "6.35", "3/8"),
  built("buildSize", ["build", "pin", "steps", 2, "diameter"], 0.075, 0.7),
  built("loadMultiple", ["loads", "cases"], cases(30), cases(5)),
  built("loadMultiple", ["loads", "cases"], cases(-20), cases(-2)),
  built("jigReading", ["asBuilt", "left", "front"], "4 9/16", "5 3/4"),
  built("jigReading", ["asBuilt", "left", "armUp"], 34.9, "1 1/2"),
  built("jigReading", ["asBuilt", "right", "armAhead"], "5 7/8", "-6"),
  built("jigReading", ["asBuilt", "right", "faceAngle"], 18, 9.5),
  one("span", ["knuckle", "span"], 14, "11 5/8"),
  one("span", ["knuckle", "span"], 9, "9 1/4"),
  row(
    "armAngle",
    "upper arm pivots measured far too low",
    [
      [arm("upperArm", "frontPivot"), ["4 7/8", "16 3/8", 10]],
      [arm("upperArm", "rearPivot"), ["-6 3/4", "16 1/8", "9 1/2"]],
    ],
    [
      [arm("upperArm", "frontPivot"), ["4 7/8", "16 3/8", 13]],
      [arm("upperArm", "rearPivot"), ["-6 3/4", "16 1/8", "12 1/2"]],
    ],
  ),
  one("steeringAxis", arm("upperArm", "ballJoint"), ["-4", "24 7/8", "18 3/4"], ["-2", "24 7/8", "18 3/4"]),
  one("steeringAxis", arm("upperArm", "ballJoint"), ["-7/16", "20 7/8", "18 3/4"], ["-7/16", 24, "18 3/4"]),
  one("camber", ["knuckle", "pinAngle"], 18.5, 16),
  one(
    "tieRodAcross",
    ["truck", "steering", "innerEnd"],
    ["6 3/8", "11 3/4", "10 1/8"],
    ["-3/8", "11 3/4", "10 1/8"],
  ),
  one("rideHeight", ["knuckle", "pinHeight"], 1, 2),
  row(
    "lipTrack",
    "hub face and backspacing that bring the tire far in",
    [
      [["knuckle", "hubFace"], 3],
      [["wheel", "backspacing"], 9],
    ],
    [
      [["knuckle", "hubFace"], 5],
      [["wheel", "backspacing"], 8],
    ],
  ),
  row("lipInTire", "a fender lip measured too low", lipAt(25), lipAt(27)),
];
