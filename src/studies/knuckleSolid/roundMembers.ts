import { addScaled, cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import { jointPlaces } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { fitsAt, type Partners } from "./memberFits.ts";
import { pastOf, type Run, runsOf } from "./memberRuns.ts";
import { pinAxis } from "./pinProfile.ts";
import type { Fit, MemberEnd, RoundMember } from "./roundMember.ts";

/**
 * Tubes and bars with their ends fitted. The order of the list decides: the pin and plates first, then each member is
 * notched to those before it that pass through its joint; the first at a corner ends square and runs past it by what the
 * others take up. Stiff connections have no shape and are left out.
 */
export function roundMembers(build: BuildSetup, knuckle: KnuckleSetup): RoundMember[] {
  const runs = runsOf(build, jointPlaces(build, knuckle));
  const before: Partners["before"][number][] = [];
  const partners: Partners = { pin: pinAxis(build, knuckle), plates: build.plates, before };
  for (const run of runs)
    before.push({ member: fittedMember(run, runs, partners), from: run.from, along: run.along });
  return before.map(({ member }) => member);
}

function fittedMember(run: Run, runs: readonly Run[], partners: Partners): RoundMember {
  const { name, kind, material, outer, inner } = run;
  const fits = [fitsAt(run, 0, partners), fitsAt(run, 1, partners)] as const;
  const mark = markOf(run, fits.flat());
  const endAt = (which: 0 | 1): MemberEnd => {
    const along = which === 0 ? run.along : scale(run.along, -1);
    const at = which === 0 ? run.from : run.to;
    const end = { at, along, mark, side: cross(along, mark) };
    const past = fits[which].length > 0 ? 0 : pastOf(run, which, runs);
    return { joint: run.joints[which], end, fits: fits[which], past };
  };
  const centers = length(sub(run.to, run.from));
  return { name, kind, material, outer, inner, length: centers, ends: [endAt(0), endAt(1)] };
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
