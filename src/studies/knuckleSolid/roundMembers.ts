import { addScaled, cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, PlateSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { type BuildPlaces, buildPlaces, type PinAxis } from "./buildPlaces.ts";
import { type Cutter, type RoundEnd, squareCut } from "./notch.ts";
import { plateAxes } from "./plateAxes.ts";

/** What the end of a member is fitted to. */
export interface Fit {
  /** Name of the member or plate; "pin". */
  readonly to: string;
  readonly cutter: Cutter;
  /** Between the two axes, at most a right angle; of a plate between axis and face. rad. */
  readonly angle: number;
}

export interface MemberEnd {
  readonly joint: string;
  readonly end: RoundEnd;
  /** What it is notched to; empty = square. */
  readonly fits: readonly Fit[];
  /** A square end runs this far past its joint, so that what is notched to it there is carried all round. mm. */
  readonly past: number;
}

/** A tube or bar as it is cut, in the knuckle frame. mm. */
export interface RoundMember {
  readonly name: string;
  readonly kind: "tube" | "bar";
  readonly material: string;
  readonly outer: number;
  /** Radius of its bore; 0 = solid. */
  readonly inner: number;
  /** Joint to joint. */
  readonly length: number;
  readonly ends: readonly [MemberEnd, MemberEnd];
}

/** Members that run within this angle of each other are not notched to one another: they butt. */
const LEAST_ANGLE = (15 * Math.PI) / 180;

/** mm. How near a joint must be to a plate's faces to stand on it. */
const TOUCHES = 0.5;

interface Run {
  readonly index: number;
  readonly name: string;
  readonly kind: "tube" | "bar";
  readonly material: string;
  readonly outer: number;
  readonly inner: number;
  readonly joints: readonly [string, string];
  readonly from: Vec3;
  readonly to: Vec3;
  readonly along: Vec3;
}

/**
 * Tubes and bars with their ends fitted. The order of the list decides: the pin and plates first, then each member is
 * notched to those before it that pass through its joint; the first at a corner ends square and runs past it by what the
 * others take up. Stiff connections have no shape and are left out.
 */
export function roundMembers(build: BuildSetup, knuckle: KnuckleSetup): RoundMember[] {
  const places = buildPlaces(build, knuckle);
  const runs = runsOf(build, places);
  return runs.map((run) => {
    const fitsFrom = fitsAt(run, 0, runs, places, build.plates);
    const fitsTo = fitsAt(run, 1, runs, places, build.plates);
    const mark = markOf(run, [...fitsFrom, ...fitsTo]);
    const endAt = (which: 0 | 1, fits: readonly Fit[]): MemberEnd => {
      const along = which === 0 ? run.along : scale(run.along, -1);
      const at = which === 0 ? run.from : run.to;
      const end = { at, along, mark, side: cross(along, mark) };
      return { joint: run.joints[which], end, fits, past: fits.length > 0 ? 0 : pastOf(run, which, runs) };
    };
    return {
      name: run.name,
      kind: run.kind,
      material: run.material,
      outer: run.outer,
      inner: run.inner,
      length: length(sub(run.to, run.from)),
      ends: [endAt(0, fitsFrom), endAt(1, fitsTo)],
    };
  });
}

/** Everything an end is cut by. */
export function cuttersOf({ end, fits, past }: MemberEnd): readonly Cutter[] {
  return fits.length > 0 ? fits.map(({ cutter }) => cutter) : [squareCut(end, past)];
}

function runsOf(build: BuildSetup, { joints }: BuildPlaces): Run[] {
  return build.members.flatMap((member, index): Run[] => {
    if (member.kind === "link") return [];
    const from = joints.get(member.from);
    const to = joints.get(member.to);
    if (from === undefined || to === undefined) return [];
    const outer = member.diameter / 2;
    return [
      {
        index,
        name: member.name,
        kind: member.kind,
        material: member.material ?? build.material,
        outer,
        inner: member.kind === "tube" ? outer - member.wall : 0,
        joints: [member.from, member.to],
        from,
        to,
        along: normalize(sub(to, from)),
      },
    ];
  });
}

function fitsAt(
  run: Run,
  which: 0 | 1,
  runs: readonly Run[],
  { pin }: BuildPlaces,
  plates: readonly PlateSetup[],
): Fit[] {
  const at = which === 0 ? run.from : run.to;
  const into = which === 0 ? run.along : scale(run.along, -1);
  const fits: Fit[] = [];
  const pinRadius = pin === null ? null : radiusAt(pin, at);
  if (pin !== null && pinRadius !== null && !isAlongside(run.along, pin.axis))
    fits.push(roundFit("pin", { point: pin.origin, axis: pin.axis, radius: pinRadius }, run));
  for (const plate of plates) {
    const fit = plateFit(plate, at, into);
    if (fit !== null) fits.push(fit);
  }
  for (const other of runs) {
    if (other.index >= run.index) break;
    if (isAlongside(run.along, other.along) || !passes(other, at)) continue;
    fits.push(roundFit(other.name, { point: other.from, axis: other.along, radius: other.outer }, run));
  }
  return fits;
}

function roundFit(to: string, round: { point: Vec3; axis: Vec3; radius: number }, { along }: Run): Fit {
  const sine = length(cross(along, round.axis));
  return {
    to,
    cutter: { kind: "cylinder", ...round },
    angle: Math.atan2(sine, Math.abs(dot(along, round.axis))),
  };
}

/** The face of a plate toward the member, where the joint lies in the plate. */
function plateFit(plate: PlateSetup, at: Vec3, into: Vec3): Fit | null {
  const { normal } = plateAxes(plate);
  const from = sub(at, plate.at);
  const off = dot(from, normal);
  if (Math.abs(off) > plate.thickness / 2 + TOUCHES) return null;
  if (!isInside(plate.outline, dot(from, plate.across), dot(from, plate.up))) return null;
  const slope = dot(into, normal);
  const angle = Math.asin(Math.min(1, Math.abs(slope)));
  if (angle < LEAST_ANGLE) return null;
  const facing = slope > 0 ? 1 : -1;
  const point = addScaled(plate.at, normal, (facing * plate.thickness) / 2);
  return { to: plate.name, cutter: { kind: "plane", point, normal: scale(normal, facing) }, angle };
}

/** By how often a line to the right crosses the outline. */
function isInside(outline: PlateSetup["outline"], u: number, v: number): boolean {
  let inside = false;
  outline.forEach(([u0, v0], i) => {
    const [u1, v1] = outline[(i + 1) % outline.length]!;
    if (v0 > v !== v1 > v && u < u0 + ((v - v0) / (v1 - v0)) * (u1 - u0)) inside = !inside;
  });
  return inside;
}

/** Radius of the pin at the foot of a point; null = the point is outside the pin. */
function radiusAt({ origin, axis, steps }: PinAxis, at: Vec3): number | null {
  const from = sub(at, origin);
  const along = dot(from, axis);
  const off = length(addScaled(from, axis, -along));
  const radii = steps
    .filter((step) => along >= step.from - TOUCHES && along <= step.to + TOUCHES)
    .map(({ diameter }) => diameter / 2);
  const radius = Math.max(0, ...radii);
  return radius > 0 && off <= radius + TOUCHES ? radius : null;
}

function passes(other: Run, at: Vec3): boolean {
  const from = sub(at, other.from);
  const along = Math.min(Math.max(0, dot(from, other.along)), length(sub(other.to, other.from)));
  return length(addScaled(from, other.along, -along)) <= other.outer + TOUCHES;
}

function isAlongside(a: Vec3, b: Vec3): boolean {
  return length(cross(a, b)) < Math.sin(LEAST_ANGLE);
}

/** How far later members that end at this joint reach along a square end. */
function pastOf(run: Run, which: 0 | 1, runs: readonly Run[]): number {
  const joint = run.joints[which];
  const later = runs.filter(
    (other) =>
      other.index > run.index && other.joints.includes(joint) && !isAlongside(run.along, other.along),
  );
  return Math.max(0, ...later.map((other) => other.outer / length(cross(run.along, other.along))));
}

/** Toward the axis of what the first notched end meets; of a square one, the knuckle's forward or up. */
function markOf({ along }: Run, fits: readonly Fit[]): Vec3 {
  const ways = fits.map(({ cutter }) => (cutter.kind === "plane" ? cutter.normal : cutter.axis));
  for (const way of [...ways, [1, 0, 0] as const, [0, 0, 1] as const]) {
    const square = addScaled(way, along, -dot(way, along));
    if (length(square) > 1e-6) return normalize(square);
  }
  throw new RangeError("markOf: a member without direction");
}
