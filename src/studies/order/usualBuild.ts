import type { OrderedHub } from "../../setup/types/orderTypes.ts";
import type { KnuckleSetup, LengthUnit } from "../../setup/types/types.ts";
import { MM_PER_INCH, unitsFromMm } from "../../units/lengthUnits.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { type ThreadCallout, threadText } from "../../units/threadCallout.ts";
import type { OrderSheet } from "./orderSheet.ts";

/** The example that a usual knuckle's sizes are taken from; invented. */
export const USUAL_KNUCKLE = "Tamarack Street short bed, knuckle on order";

/** What of a hub decides the steps of a pin, mm along the pin from the hub face. */
interface PinOfHub {
  readonly shoulder: number;
  readonly sealDiameter: number;
  readonly inner: { readonly bore: number; readonly width: number };
  readonly outer: { readonly bore: number; readonly width: number };
  readonly outerSeat: number;
  readonly pinEnd: number;
}

const inch = (inches: number) => inches * MM_PER_INCH;

/** The example's own hub. */
const USUAL_HUB: PinOfHub = {
  shoulder: inch(3.25),
  sealDiameter: inch(1.75),
  inner: { bore: inch(1.25), width: inch(0.625) },
  outer: { bore: inch(0.75), width: inch(0.625) },
  outerSeat: inch(0.75),
  pinEnd: inch(0.875),
};

/** mm. A boss stands so far off its ball joint, and ends so far off it. */
const BOSS = { foot: inch(3 / 8), top: inch(11 / 8) } as const;

/**
 * A whole `build` block as the setup file holds it: the example's posts, bosses, plates, welds and studs, hung on the ball
 * joints, the pin and the hub face of a knuckle, in a file's units. The pin's steps are those of the ordered hub where the
 * order gives them all, the rod end is the ordered one; else the example's. The steering arm's plate is drawn for the arm
 * of this knuckle. Nothing is sized for any load. @param knuckle mm, radians
 */
export function usualBuild(
  knuckle: KnuckleSetup,
  units: LengthUnit,
  ordered: Pick<OrderSheet, "order" | "parts"> | null,
): Readonly<Record<string, unknown>> {
  const length = (mm: number) => fileLength(mm, units);
  const thread = ordered?.order.steeringArm.rodEndThread ?? ordered?.order.steeringArm.thread ?? null;
  const bar = "4130 normalized bar";
  const quenched = "4140 quenched and tempered";
  const post = { kind: "tube", diameter: length(inch(1.75)), wall: length(inch(0.188)) };
  const boss = { kind: "bar", diameter: length(inch(1.75)), material: bar };
  const link = (name: string, from: string, to: string) => ({ name, kind: "link", from, to });
  const weld = (member: string, end: string, leg: number) => ({ member, end, leg: length(inch(leg)) });
  const { foot, top } = bossOf(knuckle);
  const onAxis = (mm: number) => [0, 0, length(mm)];
  return {
    material: "4130 normalized tube",
    pin: pinOf(knuckle, (ordered && wholeHub(ordered.parts.hub)) ?? USUAL_HUB, length),
    joints: [
      { name: "lower boss, foot", at: onAxis(foot) },
      { name: "lower boss, top", at: onAxis(top) },
      { name: "upper boss, foot", on: "upperBallJoint", at: onAxis(-top) },
      { name: "upper boss, head", on: "upperBallJoint", at: onAxis(-foot) },
      {
        name: "caliper bracket",
        on: "hubFace",
        at: [length(caliperSide(knuckle) * inch(3.625)), length(inch(-3.875)), 0],
      },
    ],
    members: [
      { name: "lower post", from: "lower boss, top", to: "pinRoot", ...post },
      { name: "upper post", from: "pinRoot", to: "upper boss, foot", ...post },
      { name: "lower boss", from: "lower boss, foot", to: "lower boss, top", ...boss },
      { name: "upper boss", from: "upper boss, foot", to: "upper boss, head", ...boss },
      link("lower seat", "lowerBallJoint", "lower boss, foot"),
      link("upper seat", "upper boss, head", "upperBallJoint"),
      link("steering arm", "lower boss, top", "tieRodOuter"),
      link("caliper arm", "pinRoot", "caliper bracket"),
    ],
    plates: [...armPlate(knuckle, thread, units, bar), bracketPlate(knuckle, length, bar)],
    welds: [
      weld("lower post", "from", 1 / 4),
      weld("lower post", "to", 5 / 16),
      weld("upper post", "from", 5 / 16),
      weld("upper post", "to", 1 / 4),
    ],
    studs: [
      {
        joint: "lowerBallJoint",
        diameter: length(inch(0.79)),
        reach: length(inch(7 / 8)),
        material: quenched,
      },
      {
        joint: "upperBallJoint",
        diameter: length(inch(0.67)),
        reach: length(inch(3 / 4)),
        material: quenched,
      },
    ],
    rodEnds: [
      {
        joint: "tieRodOuter",
        thread: thread === null ? "5/8-18" : threadText(thread),
        reach: length(ordered?.order.steeringArm.shank ?? inch(1.875)),
        lean: 2,
        material: quenched,
      },
    ],
    caliperAt: "caliper bracket",
  };
}

/** A length as a file holds it: a plain number where that says it. */
function fileLength(mm: number, units: LengthUnit): string | number {
  const text = plainLengthText(mm, units);
  return String(Number(text)) === text ? Number(text) : text;
}

type Length = (mm: number) => string | number;

/** The bosses, shorter where the pin sits near a ball joint. */
function bossOf({ span, pinHeight }: KnuckleSetup): typeof BOSS | { foot: number; top: number } {
  const room = Math.min(Math.abs(pinHeight), Math.abs(span - pinHeight), span / 2) / (2 * BOSS.top);
  const share = Math.min(1, Math.max(0.25, room));
  return { foot: share * BOSS.foot, top: share * BOSS.top };
}

/** What a pin needs of a hub; null = not all of it is given, or it is no pin that thins outward. */
function wholeHub({
  shoulder,
  sealDiameter,
  innerBearing,
  outerBearing,
  outerSeat,
  pinEnd,
}: OrderedHub): PinOfHub | null {
  const [inner, outer] = [innerBearing, outerBearing].map(({ bore, width }) =>
    bore === null || width === null ? null : { bore, width },
  );
  if (!inner || !outer || shoulder === null || sealDiameter === null || outerSeat === null || pinEnd === null)
    return null;
  const isOutward = -shoulder + inner.width < -outerSeat - STEP_INBOARD && -outerSeat + outer.width < pinEnd;
  const isThinner = sealDiameter > inner.bore && inner.bore > outer.bore;
  return isOutward && isThinner ? { shoulder, sealDiameter, inner, outer, outerSeat, pinEnd } : null;
}

/** mm. How far inboard of the outer bearing's seat the pin steps down to it. */
const STEP_INBOARD = inch(1 / 8);

/** Where a tapered roller bearing carries along its width, from its inboard side; the example's. */
const CARRIES = { inner: 0.5, outer: 0.3 } as const;

function pinOf({ hubFace }: KnuckleSetup, hub: PinOfHub, length: Length) {
  const { shoulder, sealDiameter, inner, outer, outerSeat, pinEnd } = hub;
  const [seat, step, end] = [hubFace - shoulder, hubFace - outerSeat - STEP_INBOARD, hubFace + pinEnd];
  // On a hub face nearer than the hub is deep the pin's root moves inboard of the steering axis.
  const root = Math.min(0, seat - inch(1));
  const fillet = (size: number, thick: number, thin: number) =>
    length(Math.min(inch(size), (thick - thin) / 2));
  return {
    material: "4340 quenched and tempered",
    steps: [
      { from: length(root), to: length(seat), diameter: length(sealDiameter) },
      {
        from: length(seat),
        to: length(step),
        diameter: length(inner.bore),
        fillet: fillet(3 / 32, sealDiameter, inner.bore),
      },
      {
        from: length(step),
        to: length(end),
        diameter: length(outer.bore),
        fillet: fillet(1 / 16, inner.bore, outer.bore),
      },
    ],
    bearings: {
      inner: length(seat + CARRIES.inner * inner.width),
      outer: length(hubFace - outerSeat + CARRIES.outer * outer.width),
    },
    forHubFace: length(hubFace),
  };
}

/** The caliper hangs on the side that the steering arm leaves free. +1 = ahead */
function caliperSide({ steeringArm }: KnuckleSetup): 1 | -1 {
  return steeringArm[0] > 0 ? -1 : 1;
}

/** mm. What a bolt's hole is wider than its thread. */
const PLAY = inch(1 / 32);

/** The steering arm, from the lower boss to the tie rod's end; none where there is no room for one. */
function armPlate(
  { steeringArm: [x, y, z] }: KnuckleSetup,
  thread: ThreadCallout | null,
  units: LengthUnit,
  material: string,
): readonly object[] {
  const long = Math.hypot(x, y);
  const hole = (thread?.diameter ?? inch(5 / 8)) + PLAY;
  if (long < inch(1.5) || hole > inch(1)) return [];
  const length: Length = (mm) => fileLength(mm, units);
  const mark = units === "in" ? MM_PER_INCH / 16 : 1;
  const near = (mm: number) => Math.ceil(mm / mark - 1e-9) * mark;
  const [from, to, tip] = [near(inch(3 / 4)), near(long), near(long + inch(0.5))];
  const plain = (mm: number) => Number(unitsFromMm(mm, units).toFixed(4)) + 0;
  const corners = [
    ...[[from, -0.75] as const, [to, -0.625] as const, [tip, -0.25] as const],
    ...[[tip, 0.25] as const, [to, 0.625] as const, [from, 0.75] as const],
  ];
  return [
    {
      name: "steering arm plate",
      thickness: length(inch(5 / 8)),
      material,
      at: [0, 0, length(z)],
      across: [plain(x), plain(y), 0],
      up: [plain(-y), plain(x), 0],
      outline: corners.map(([u, v]) => [length(u), length(inch(v))]),
      holes: [{ at: [plain(long), 0], diameter: length(hole) }],
    },
  ];
}

function bracketPlate(knuckle: KnuckleSetup, length: Length, material: string) {
  const at = (u: number, v: number) => [length(inch(u)), length(inch(v))];
  return {
    name: "caliper bracket plate",
    thickness: length(inch(3 / 8)),
    material,
    on: "hubFace",
    at: [0, length(inch(-3.875)), 0],
    across: [caliperSide(knuckle), 0, 0],
    up: [0, 0, 1],
    outline: [at(7 / 8, -1), at(33 / 8, -2.25), at(33 / 8, 2.25), at(7 / 8, 1)],
    holes: [at(29 / 8, -1.75), at(29 / 8, 1.75)].map((one) => ({
      at: one,
      diameter: length(inch(33 / 64)),
    })),
  };
}
