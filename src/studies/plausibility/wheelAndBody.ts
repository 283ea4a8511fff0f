import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { backspacingFromOffset } from "../../units/wheelOffset.ts";
import type { Model } from "../model/model.ts";
import { gapsAt } from "../reports/gapsAt.ts";
import { isUsual, meantBy, type Unusual, type UsualRange } from "./unusual.ts";

/** Rim width between the flanges to overall width: half an inch of flange a side. */
const FLANGES = MM_PER_INCH;

/** mm. Least backspacing: deeper dishes are not made. Common practice, no source. */
const LEAST_BACKSPACING = 0.5 * MM_PER_INCH;

/** Loaded radius as a share of the free one. Common practice, no source. */
const LOADED_SHARE = 0.85;

/** mm, contact patch over the floor that was measured from: a drop knuckle lifts the wheel. Common practice, no source. */
const RIDE: UsualRange = { least: -3 * MM_PER_INCH, most: 7 * MM_PER_INCH };

/** mm, fender lip outboard of the middle of the tire. Common practice, no source. */
const LIP: UsualRange = { least: -4 * MM_PER_INCH, most: 10 * MM_PER_INCH };

/** mm. Metal this deep in the tire where the truck stood to be measured. */
const DEEP = MM_PER_INCH;

/** Backspacing that puts the mounting face outside of the wheel. */
export function oddBackspacing({ wheel, units }: Setup): readonly Unusual[] {
  const value = backspacingFromOffset(wheel.offset, wheel.rimWidth);
  const range = { least: LEAST_BACKSPACING, most: wheel.rimWidth + FLANGES };
  if (isUsual(value, range)) return [];
  const paths: Unusual["paths"] = [
    ["wheel", "backspacing"],
    ["wheel", "offset"],
    ["wheel", "rimWidth"],
  ];
  const meant = meantBy(value, range, "length", units);
  return [{ check: "backspacing", paths, kind: "length", value, ...range, meant, beside: wheel.rimWidth }];
}

/** A loaded radius far below the free one: the tire would stand on its sidewalls. */
export function oddLoadedRadius({ tire, setup }: Model): readonly Unusual[] {
  const range = { least: LOADED_SHARE * tire.freeRadius, most: tire.freeRadius };
  if (isUsual(tire.loadedRadius, range)) return [];
  const meant = meantBy(tire.loadedRadius, range, "length", setup.units);
  const paths: Unusual["paths"] = [["tire", "loadedRadius"]];
  return [
    { check: "loadedRadius", paths, kind: "length", value: tire.loadedRadius, ...range, meant, beside: null },
  ];
}

/** A tire that stands far above or below the floor the truck was measured from. */
export function oddRideHeight({ frontEnd }: Model): readonly Unusual[] {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return [];
  const value = pose.left.contactPatch[2];
  if (isUsual(value, RIDE)) return [];
  const paths: Unusual["paths"] = [
    ["truck", "lowerArm", "ballJoint", 2],
    ["knuckle", "pinHeight"],
    ["tire", "loadedRadius"],
  ];
  return [{ check: "rideHeight", paths, kind: "length", value, ...RIDE, meant: [], beside: null }];
}

/** A tire far inside or outside of the fender lip. */
export function oddTrack({ setup, frontEnd }: Model): readonly Unusual[] {
  const pose = solvePose(frontEnd, 0, 0);
  const lip = lipOf(setup);
  if (!pose.ok || lip === null) return [];
  const halfTrack = pose.left.contactPatch[1];
  const value = lip.halfWidth - halfTrack;
  if (isUsual(value, LIP)) return [];
  const paths: Unusual["paths"] = [lip.path, ["knuckle", "hubFace"]];
  return [{ check: "lipTrack", paths, kind: "length", value, ...LIP, meant: [], beside: halfTrack }];
}

/** Body metal deep inside the tire as the truck stands. */
export function lipInTire(model: Model): readonly Unusual[] {
  const { setup, frontEnd, pairs } = model;
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return [];
  // The body alone: what rides on the knuckle is most of the work of all gaps, and this is asked at every key.
  const gaps = gapsAt({ pairs: pairs.filter(({ kind }) => kind === "body") }, pose);
  return setup.truck.body.flatMap(({ name }, i): readonly Unusual[] => {
    const value = Math.min(...gaps.filter(({ part }) => part === name).map(({ gap }) => gap));
    if (!(value < -DEEP)) return [];
    const paths: Unusual["paths"] = [["truck", "body", i]];
    return [
      { check: "lipInTire", paths, kind: "length", value, least: -DEEP, most: null, meant: [], beside: null },
    ];
  });
}

/** How far out the fender lip is: the measured lip, or else the outermost part with that in its name. */
function lipOf({ floor, truck }: Setup): { readonly path: KeyPath; readonly halfWidth: number } | null {
  if (floor?.lip) return { path: ["floor", "lip", 1], halfWidth: floor.lip[1] };
  return truck.body.reduce<ReturnType<typeof lipOf>>((outermost, part, i) => {
    if (!/\b(lip|fender|arch)\b/i.test(part.name) || /inner/i.test(part.name) || part.side === "right")
      return outermost;
    const halfWidth = farthestOut(part);
    return outermost && outermost.halfWidth >= halfWidth
      ? outermost
      : { path: ["truck", "body", i], halfWidth };
  }, null);
}

function farthestOut(part: BodyPart): number {
  if (part.kind === "box") return part.max[1];
  if (part.kind === "path") return Math.max(...part.points.map(([, y]) => y)) + part.radius;
  return part.positions.reduce(
    (most, y, i) => (i % 3 === 1 && y > most ? y : most),
    Number.NEGATIVE_INFINITY,
  );
}
