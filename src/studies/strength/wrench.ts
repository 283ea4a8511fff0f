import { cross, sub, type Vec3 } from "../../geometry/vec.ts";

/** A force at a point, N and mm, and a moment beside it, N·mm. */
export interface ForceAt {
  readonly at: Vec3;
  readonly force: Vec3;
  readonly moment?: Vec3;
}

/** Forces about one point: their sum, N, and their moment about it, N·mm. */
export interface Wrench {
  readonly force: Vec3;
  readonly moment: Vec3;
}

const NOTHING: Vec3 = [0, 0, 0];

export function plus(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

/** The wrench of forces about a point. */
export function wrenchAbout(point: Vec3, forces: readonly ForceAt[]): Wrench {
  return forces.reduce<Wrench>(
    (sum, { at, force, moment = NOTHING }) => ({
      force: plus(sum.force, force),
      moment: plus(sum.moment, plus(cross(sub(at, point), force), moment)),
    }),
    { force: NOTHING, moment: NOTHING },
  );
}

/** The same force on the other side of the truck: a moment, which turns, is mirrored the other way round. */
export function mirroredForce({ at, force, moment }: ForceAt): ForceAt {
  const mirrored = { at: mirror(at), force: mirror(force) };
  return moment === undefined ? mirrored : { ...mirrored, moment: [-moment[0], moment[1], -moment[2]] };
}

function mirror([x, y, z]: Vec3): Vec3 {
  return [x, -y, z];
}
