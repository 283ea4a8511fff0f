import { type RingShape, ringShapeOf } from "../../gaps/ring/ringShape.ts";

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
