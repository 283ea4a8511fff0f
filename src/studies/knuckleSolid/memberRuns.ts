import { cross, length, normalize, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";

/** A tube or bar before its ends are fitted: knuckle frame, mm; `index` its place in the list. */
export interface Run {
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

/** Members that run within this angle of each other are not notched to one another: they butt. */
export const LEAST_ANGLE = (15 * Math.PI) / 180;

/** Tubes and bars; stiff connections have no shape. */
export function runsOf(build: BuildSetup, joints: ReadonlyMap<string, Vec3>): Run[] {
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

export function isAlongside(a: Vec3, b: Vec3): boolean {
  return length(cross(a, b)) < Math.sin(LEAST_ANGLE);
}

/** How far later members that end at this joint reach along a square end. */
export function pastOf(run: Run, which: 0 | 1, runs: readonly Run[]): number {
  const joint = run.joints[which];
  const later = runs.filter(
    (other) =>
      other.index > run.index && other.joints.includes(joint) && !isAlongside(run.along, other.along),
  );
  return Math.max(0, ...later.map((other) => other.outer / length(cross(run.along, other.along))));
}
