import { tireDesignDimensions } from "../../gaps/tire/designDimensions.ts";
import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { NumberWithin } from "../../setup/types/withinTypes.ts";
import { parseTireSize } from "../../units/tireSize.ts";
import { mayMove } from "../window/fieldsToVary.ts";

/** Where an uncertainty is from: typed beside the number, the odds block, the tire standard, the jig's tolerance, a reading. */
export type WithinSource = "typed" | "points" | "tire" | "build" | "reading";

/** One number that is drawn: its place, and one standard deviation of it; mm or radians. */
export interface OddsInput {
  readonly path: KeyPath;
  readonly key: string;
  readonly kind: "length" | "angle";
  readonly within: number;
  readonly source: WithinSource;
}

/** What is drawn of a truck, and what tells an uncertainty that is not. */
export interface OddsInputs {
  readonly inputs: readonly OddsInput[];
  /** Keys of numbers with a ± of their own that move no gap, or stand in a mesh. */
  readonly leftOut: readonly string[];
}

/**
 * Share of a tire's section width, and of twice its section height, that is one standard deviation. UN R30, par. 6.1.4 and
 * 6.1.5 (from memory), lets a new radial be 4 % over its design dimensions; nearly all are taken to keep that, so it is two
 * standard deviations. Tires also come smaller than designed, about as often: no source.
 */
const TIRE_SHARE = 0.5 * 0.04;

/** What passes the jig lies within its tolerance nearly always: two standard deviations. */
const BUILD_SHARE = 0.5;

const AXES = [0, 1, 2] as const;

/**
 * Every number of a setup that is drawn: what is typed beside a number goes before what holds for its sort.
 * @param read keys of numbers that are drawn by their readings
 */
export function oddsInputs(setup: Setup, read: ReadonlySet<string> = new Set()): OddsInputs {
  const typed = setup.within.filter((one) => isDrawn(one, setup));
  const inputs = new Map<string, OddsInput>();
  const add = (path: KeyPath, kind: OddsInput["kind"], within: number, source: WithinSource) => {
    const key = keyText(path);
    if (within > 0 && !inputs.has(key)) inputs.set(key, { path, key, kind, within, source });
  };
  const told = new Set(setup.within.map(({ path }) => keyText(path)));
  const addUntold: typeof add = (path, ...rest) => {
    const key = keyText(path);
    if (!told.has(key) && !read.has(key)) add(path, ...rest);
  };
  for (const { path, kind, within } of typed) add(path, kind as OddsInput["kind"], within, "typed");
  addTire(setup, addUntold);
  addKnuckle(setup, addUntold);
  if (setup.odds.points > 0)
    for (const path of pointPaths(setup))
      for (const axis of AXES) addUntold([...path, axis], "length", setup.odds.points, "points");
  const leftOut = setup.within.filter((one) => one.within > 0 && !isDrawn(one, setup));
  return { inputs: [...inputs.values()], leftOut: leftOut.map(({ path }) => keyText(path)) };
}

function isDrawn({ path, kind }: NumberWithin, { truck }: Setup): boolean {
  if (kind !== "length" && kind !== "angle") return false;
  if (!mayMove(path)) return false;
  return path[1] !== "body" || truck.body[Number(path[2])]?.kind !== "mesh";
}

type Add = (path: KeyPath, kind: OddsInput["kind"], within: number, source: WithinSource) => void;

function addTire({ tire, wheel, odds }: Setup, add: Add): void {
  const size = tire.kind === "size" ? parseTireSize(tire.size) : null;
  if (size === null) return; // measured is measured
  const { diameter, sectionWidth, rimDiameterNominal } = tireDesignDimensions(size, wheel.rimWidth);
  add(["tire", "sectionWidth"], "length", odds.tire.sectionWidth ?? TIRE_SHARE * sectionWidth, "tire");
  add(
    ["tire", "diameter"],
    "length",
    odds.tire.diameter ?? TIRE_SHARE * (diameter - rimDiameterNominal),
    "tire",
  );
}

function addKnuckle({ odds: { knuckle }, jig: { tolerances } }: Setup, add: Add): void {
  const of = (key: string, within: number | null, tolerance: number, kind: OddsInput["kind"] = "length") =>
    add(["knuckle", key], kind, within ?? BUILD_SHARE * tolerance, "build");
  of("span", knuckle.span, tolerances.span);
  of("pinHeight", knuckle.pinHeight, tolerances.height);
  of("pinLead", knuckle.pinLead, tolerances.lead);
  of("pinAngle", knuckle.pinAngle, tolerances.faceAngle, "angle");
  of("hubFace", knuckle.hubFace, tolerances.tape);
  for (const axis of AXES)
    add(
      ["knuckle", "steeringArm", axis],
      "length",
      knuckle.steeringArm ?? BUILD_SHARE * tolerances.steeringArm,
      "build",
    );
}

/** Points somebody measured: of arms, steering, paths and boxes. */
function pointPaths({ truck: { steering, body } }: Setup): readonly KeyPath[] {
  const arms = (["upperArm", "lowerArm"] as const).flatMap((arm) =>
    ["frontPivot", "rearPivot", "ballJoint"].map((key) => ["truck", arm, key]),
  );
  const ends = steering.type === "rack" ? [["innerEnd"]] : PITMAN_POINTS;
  const linkage = ends.map((end) => ["truck", "steering", ...end]);
  const parts = body.flatMap((part, i): KeyPath[] => {
    const at: KeyPath = ["truck", "body", i];
    if (part.kind === "path") return part.points.map((_, n) => [...at, "points", n]);
    return part.kind === "box"
      ? [
          [...at, "min"],
          [...at, "max"],
        ]
      : [];
  });
  return [...arms, ...linkage, ...parts];
}

const PITMAN_POINTS = [
  ["innerEnd"],
  ["pitman", "pivot"],
  ["pitman", "end"],
  ["idler", "pivot"],
  ["idler", "end"],
];
