import { addScaled, cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { PlateSetup } from "../../setup/types/buildTypes.ts";
import { isAlongside, LEAST_ANGLE, type Run } from "./memberRuns.ts";
import { cutAt, pointOn, type RoundEnd } from "./notch.ts";
import type { PinAxis } from "./pinProfile.ts";
import { plateAxes } from "./plateMesh.ts";
import { endFrom, type Fit, type RoundMember } from "./roundMember.ts";

/** What a member may be fitted to. */
export interface Partners {
  readonly pin: PinAxis | null;
  readonly plates: readonly PlateSetup[];
  /** Members before it, fitted; where their axes start and run. */
  readonly before: readonly { readonly member: RoundMember; readonly from: Vec3; readonly along: Vec3 }[];
}

/** mm. How near a joint must be to a plate's faces, or to a round, to stand on it. */
const TOUCHES = 0.5;

/** Places round a member at which ends are compared. */
const WRAPS = Array.from({ length: 72 }, (_, i) => (2 * Math.PI * i) / 72);

/** What an end of a member is fitted to: the pin, plates and the members before it that pass through its joint. */
export function fitsAt(run: Run, which: 0 | 1, { pin, plates, before }: Partners): Fit[] {
  const at = which === 0 ? run.from : run.to;
  const into = which === 0 ? run.along : scale(run.along, -1);
  const fits: Fit[] = [];
  const pinRadius = pin === null ? null : radiusAt(pin, at);
  if (pin !== null && pinRadius !== null && !isAlongside(run.along, pin.axis))
    fits.push(
      roundFit("pin", { point: pin.origin, axis: pin.axis, radius: pinRadius }, run, [
        pin.steps[0]!.from,
        pin.steps.at(-1)!.to,
      ]),
    );
  for (const plate of plates) {
    const fit = plateFit(plate, at, into);
    if (fit !== null) fits.push(fit);
  }
  const firm = fits.length;
  for (const { member, from, along } of before) {
    if (isAlongside(run.along, along) || !passes(member, from, along, at)) continue;
    const round = { point: from, axis: along, radius: member.outer };
    fits.push(roundFit(member.name, round, run, reachOf(member)));
  }
  return neededFits(fits, firm, { at, along: into, ...squareTo(into) }, run.outer);
}

/** Where the material of a member begins and ends along its axis, its longest tips. */
function reachOf({ ends, outer, length: centers }: RoundMember): readonly [number, number] {
  const tip = (end: RoundMember["ends"][0]) => Math.min(...WRAPS.map((wrap) => endFrom(end, outer, wrap)));
  return [tip(ends[0]), centers - tip(ends[1])];
}

/**
 * Without members that others keep it clear of: wherever they would cut deepest they have ended already. The pin and plates, the
 * first `firm`, stay; where nothing would be left all stay.
 */
function neededFits(fits: readonly Fit[], firm: number, end: RoundEnd, radius: number): Fit[] {
  const needed = fits.filter((fit, i) => {
    if (i < firm || fits.length === 1 || fit.cutter.kind === "plane" || fit.reach === null) return true;
    const { cutter, reach } = fit;
    return WRAPS.some((wrap) => {
      const { from, meets } = cutAt(end, cutter, radius, wrap);
      const isDeepest = fits.every((other) => cutAt(end, other.cutter, radius, wrap).from <= from + 1e-9);
      const along = dot(sub(pointOn(end, from, radius, wrap), cutter.point), cutter.axis);
      return meets && isDeepest && along >= reach[0] - TOUCHES && along <= reach[1] + TOUCHES;
    });
  });
  return needed.length > 0 ? needed : [...fits];
}

function roundFit(
  to: string,
  round: { point: Vec3; axis: Vec3; radius: number },
  { along }: Run,
  reach: readonly [number, number],
): Fit {
  const sine = length(cross(along, round.axis));
  return {
    to,
    reach,
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
  return {
    to: plate.name,
    reach: null,
    cutter: { kind: "plane", point, normal: scale(normal, facing) },
    angle,
  };
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

/** Whether a point lies on a member's stretch from joint to joint, within its round. */
function passes({ outer, length: centers }: RoundMember, start: Vec3, axis: Vec3, at: Vec3): boolean {
  const from = sub(at, start);
  const along = dot(from, axis);
  if (along < -TOUCHES || along > centers + TOUCHES) return false;
  return length(addScaled(from, axis, -along)) <= outer + TOUCHES;
}

/** Any two directions that make a frame with one. */
function squareTo(along: Vec3): { readonly mark: Vec3; readonly side: Vec3 } {
  const mark = normalize(cross(along, Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  return { mark, side: cross(along, mark) };
}
