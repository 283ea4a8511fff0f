import type { Setup } from "../../setup/types/types.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { type MeasuredPoint, measuredPoints } from "./fileUnits.ts";
import { isUsual, meantBy, type Unusual, type UsualRange } from "./unusual.ts";

const inches = (least: number, most: number): UsualRange => ({
  least: least * MM_PER_INCH,
  most: most * MM_PER_INCH,
});

/** x, y, z of points of arms and steering, from the axle line, the center plane and the floor. Common practice, no source. */
const FRONT_ENDS: readonly UsualRange[] = [inches(-36, 36), inches(-50, 50), inches(-2, 50)];

/** The same of bodies: a truck is at most 8 1/2 ft wide; a long bed reaches 20 ft behind the axle. Common practice, no source. */
const BODIES: readonly UsualRange[] = [inches(-260, 100), inches(-51, 51), inches(-4, 110)];

/** Coordinates that lie outside of a truck. */
export function farAwayPoints(setup: Setup): readonly Unusual[] {
  return measuredPoints(setup).flatMap(({ path, at, of }) =>
    at.flatMap((value, axis): readonly Unusual[] => {
      const range = (of === "front" ? FRONT_ENDS : BODIES)[axis]!;
      if (isUsual(value, range)) return [];
      const meant = meantBy(value, range, "length", setup.units);
      return [
        { check: "farAway", paths: [[...path, axis]], kind: "length", value, ...range, meant, beside: null },
      ];
    }),
  );
}

/** mm. A point nearer to the center plane than this may well lie across it. */
const ACROSS = MM_PER_INCH;

/** Points of the left side typed at y < 0, of the right at y > 0, and whole body parts that stand on the other side. */
export function mixedSides(setup: Setup): readonly Unusual[] {
  const points = measuredPoints(setup);
  const ofFront = points.flatMap((point) =>
    point.side !== 0 && point.side * point.at[1] < -ACROSS ? [sideSlip(point, point.side)] : [],
  );
  const ofBody = setup.truck.body.flatMap((part, i): readonly Unusual[] => {
    if (part.side === "right") return [];
    const own = points.filter(({ path }) => path[1] === "body" && path[2] === i);
    const left = own.filter(({ at }) => at[1] > ACROSS);
    const right = own.filter(({ at }) => at[1] < -ACROSS);
    // A box or a hose may cross the center plane; a part all on the right, or one point of many there, is a slip.
    const isAllRight = right.length > 0 && left.length === 0;
    const isOneOff = right.length === 1 && left.length >= 4;
    return isAllRight || isOneOff ? right.slice(0, 1).map((point) => sideSlip(point, 1)) : [];
  });
  return [...ofFront, ...ofBody];
}

function sideSlip({ path, at }: MeasuredPoint, side: 1 | -1): Unusual {
  const [, value] = at;
  return {
    check: "leftRight",
    paths: [[...path, 1]],
    kind: "length",
    value,
    beside: null,
    ...(side === 1 ? { least: 0, most: null } : { least: null, most: 0 }),
    meant: [{ slip: "sign", value: -value }],
  };
}
