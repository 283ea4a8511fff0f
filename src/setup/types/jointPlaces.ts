import type { BuildSetup } from "./buildTypes.ts";
import type { Point } from "./truckTypes.ts";
import type { KnuckleSetup } from "./types.ts";

/** A point of the pin's axis, knuckle frame. @param along from the steering axis along the pin, + outboard, as `hubFace`, mm */
export function pointOnPin({ pinLead, pinHeight, pinAngle }: KnuckleSetup, along: number): Point {
  return [pinLead, along * Math.cos(pinAngle), pinHeight - along * Math.sin(pinAngle)];
}

/**
 * Every joint of a knuckle by its name, knuckle frame, mm: its own and those each knuckle has. `pinRoot` stands only with a
 * pin of some steps.
 */
export function jointPlaces(build: BuildSetup, knuckle: KnuckleSetup): ReadonlyMap<string, Point> {
  const places = new Map<string, Point>([
    ["lowerBallJoint", [0, 0, 0]],
    ["upperBallJoint", [0, 0, knuckle.span]],
    ["tieRodOuter", knuckle.steeringArm],
    ["hubFace", pointOnPin(knuckle, knuckle.hubFace)],
  ]);
  const root = build.pin?.steps[0];
  if (root) places.set("pinRoot", pointOnPin(knuckle, root.from));
  for (const { name, at } of build.joints) if (!places.has(name)) places.set(name, at);
  return places;
}

/** mm. A joint this near a member's line lies on it: drawings are rounded to 1/64 in, either way. */
const ON_LINE = 0.4;

/** How far along the stretch between two points a third one lies, 0 … 1; null = it lies off the stretch. */
export function shareAlong(point: Point, from: Point, to: Point): number | null {
  let along = 0;
  let lengthSq = 0;
  for (const i of [0, 1, 2] as const) {
    along += (point[i] - from[i]) * (to[i] - from[i]);
    lengthSq += (to[i] - from[i]) ** 2;
  }
  const share = lengthSq > 0 ? Math.min(1, Math.max(0, along / lengthSq)) : 0;
  let offSq = 0;
  for (const i of [0, 1, 2] as const) offSq += (from[i] + share * (to[i] - from[i]) - point[i]) ** 2;
  return offSq <= ON_LINE ** 2 ? share : null;
}
