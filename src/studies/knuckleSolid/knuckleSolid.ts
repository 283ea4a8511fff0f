import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { cross, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { pointOn, type RoundEnd } from "./notch.ts";
import { type PinAxis, pinAxis, pinProfile } from "./pinProfile.ts";
import { plateMesh } from "./plateMesh.ts";
import { endFrom, type RoundMember } from "./roundMember.ts";
import { roundMembers } from "./roundMembers.ts";
import { turnedMesh } from "./roundMesh.ts";

/** A body of the knuckle: closed, counterclockwise seen from outside; knuckle frame, mm. */
export interface SolidBody {
  readonly name: string;
  readonly kind: "pin" | "tube" | "bar" | "plate";
  readonly mesh: TriangleMesh;
}

/** Flat sides a round has: at 5 degrees each a round of 50 mm is at most 0.05 mm too thin between its corners. */
const FACETS = 72;

/** Steps from bore to outside on the face of an end, so that a saddle stays round; of a bar from its axis. */
const FACE_STEPS = { tube: 4, bar: 8 } as const;

/**
 * The knuckle as its build says: every member fitted to what it meets, the pin by its steps, plates with their holes. Bodies
 * touch but do not overlap, save where a member's wall passes a corner of a pin's step. Joints, bosses for studs and welds
 * are not part of a build and are not drawn. Corners lie on the true rounds.
 */
export function knuckleSolid(build: BuildSetup, knuckle: KnuckleSetup): SolidBody[] {
  const pin = pinAxis(build, knuckle);
  return [
    ...(pin === null ? [] : [{ name: "pin", kind: "pin", mesh: pinMesh(pin) } as const]),
    ...roundMembers(build, knuckle).map((member) => ({
      name: member.name,
      kind: member.kind,
      mesh: memberMesh(member),
    })),
    ...build.plates.map(
      (plate) => ({ name: plate.name, kind: "plate", mesh: plateMesh(plate, FACETS) }) as const,
    ),
  ];
}

/** A tube or bar with both ends notched. @param facets default 72 */
export function memberMesh(member: RoundMember, facets: number = FACETS): TriangleMesh {
  const { kind, outer, inner, length, ends } = member;
  const [{ end }] = ends;
  const steps = FACE_STEPS[kind];
  const radii = Array.from({ length: steps + 1 }, (_, i) => inner + ((outer - inner) * i) / steps);
  // Round the section: out along the first end's face, back along the second's; a bore closes the ring.
  const loops = [
    ...radii.map((radius) => ({ radius, isFirst: true })),
    ...[...radii].reverse().map((radius) => ({ radius, isFirst: false })),
  ];
  const place = (loop: number, wrap: number): Vec3 => {
    const { radius, isFirst } = loops[loop]!;
    const from = isFirst ? endFrom(ends[0], radius, wrap) : length - endFrom(ends[1], radius, -wrap); // seen from the other end wrapping turns the other way
    return pointOn(end, from, radius, wrap);
  };
  return turnedMesh(loops.length, facets, place, (loop) => loops[loop]!.radius === 0, inner > 0);
}

function pinMesh({ origin, axis, steps }: PinAxis): TriangleMesh {
  const profile = pinProfile(steps);
  const forward: Vec3 = [1, 0, 0];
  const end: RoundEnd = { at: origin, along: axis, mark: forward, side: cross(axis, forward) };
  const place = (loop: number, wrap: number) => {
    const [along, radius] = profile[loop]!;
    return pointOn(end, along, radius, wrap);
  };
  return turnedMesh(profile.length, FACETS, place, (loop) => profile[loop]![1] === 0, false);
}
