import { type RingShape, ringShapeOf } from "../../gaps/ring/ringShape.ts";
import type { ProfilePoint, RotorSetup, WheelSetup } from "../../setup/types/types.ts";

/** Rings kept: a setup and its variants seldom have more tires than this between them. */
const MAX_KNOWN = 8;

const known = new Map<string, RingShape>();

/**
 * The ring of a profile, as `ringShapeOf`, made once for each of the last few profiles: how deep a section is takes long
 * to find out, and most edits of a setup leave the tire alone.
 */
export function shapeOfRing(profile: ArrayLike<number>, barrelRadius: number): RingShape {
  const key = `${Array.prototype.join.call(profile, " ")} ${barrelRadius}`;
  const ring = known.get(key) ?? ringShapeOf(profile, barrelRadius);
  // Last used last: the first is the one to go.
  known.delete(key);
  known.set(key, ring);
  if (known.size > MAX_KNOWN) known.delete(known.keys().next().value!);
  return ring;
}

/**
 * mm. Everything outboard of the wheel center's inner surface counts as solid; the section is closed this far
 * outboard of it, more than any wheel is wide, so that a depth is always measured back to the surface.
 */
const SOLID_DEPTH = 500;

/** A section that holds the axis is drawn across it to −r, so that the axis is not taken for its surface. */
function acrossAxis(half: readonly ProfilePoint[]): RingShape {
  const mirrored = half.map(([x, r]) => [x, -r] as const).reverse();
  return shapeOfRing([...mirrored, ...half].flat(), mirrored[0]![1]);
}

/** The rotor as a solid disk about the wheel axis; x from the wheel center. */
export function rotorRing({ diameter, thickness, inboard }: RotorSetup, wheelOffset: number): RingShape {
  const outboard = wheelOffset - inboard;
  const radius = diameter / 2;
  return acrossAxis([
    [outboard - thickness, radius],
    [outboard, radius],
  ]);
}

/**
 * What is outboard of the inner surface of the wheel's center, as a solid of revolution; x from the wheel
 * center. Where the surface is not given it is a flat disk at the mounting face. From its first point it runs
 * straight in to the axis, from its last straight out to the barrel, so a hub or a gap there counts as solid.
 */
export function wheelCenterRing({ center, offset, barrelDiameter }: WheelSetup): RingShape {
  const surface: readonly ProfilePoint[] = center ?? [[0, 0]];
  const half = surface.map(([x, r]): ProfilePoint => [x + offset, r]);
  const [lastX, lastR] = half.at(-1)!;
  const barrel = barrelDiameter / 2;
  if (lastR < barrel) half.push([lastX, barrel]);
  half.push([Math.max(...half.map(([x]) => x)) + SOLID_DEPTH, Math.max(lastR, barrel)]);
  return acrossAxis(half);
}
