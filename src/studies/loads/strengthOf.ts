import { dot, length, type Vec3 } from "../../geometry/vec.ts";
import type { Material } from "../../setup/catalogs/readMaterials.ts";
import type { BuildSetup, JointName } from "../../setup/types/buildTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import {
  type KnuckleFrame,
  type KnuckleFrameResult,
  knuckleFrameOf,
  pinHeldTo,
} from "../strength/knuckleFrame.ts";
import { type KnuckleLoads, knuckleLoads, pinDirection } from "../strength/knuckleLoads.ts";
import { Materials } from "../strength/material.ts";
import { memberStresses, weldStresses } from "../strength/memberStress.ts";
import { type PinPlace, pinStresses } from "../strength/pinStress.ts";
import { rodEndStress, studStress } from "../strength/studStress.ts";
import { allOf, type CaseAt } from "./caseAt.ts";

/** A stress at a place of the part. */
export interface Stress {
  readonly kind: "pin" | "member" | "weld" | "stud" | "rodEnd";
  /** Name of the member; of the pin "pin", of studs and rod ends the joint. */
  readonly member: string;
  /** A joint's or place's name; along the pin mm from the steering axis; of a member a share of its length. */
  readonly at: string | number;
  /** Of the pin: what stands there. */
  readonly place: PinPlace["place"] | null;
  /** MPa; raised at a shoulder of the pin; √3 times the throat's shear of a weld. */
  readonly vonMises: number;
  /** Without the shoulder's rise. */
  readonly nominal: number;
  readonly shareOfYield: number;
  /** Name of the material whose yield it is a share of. */
  readonly material: string;
}

/** How the hub gives under a case, knuckle frame, against the line of the ball joints. */
export interface Deflection {
  /** At the hub face, mm. */
  readonly hubFace: number;
  /** Change of camber, rad, + = top outward. */
  readonly camber: number;
}

export interface Strength {
  readonly stresses: readonly Stress[];
  /** null = there is no frame to work it out. */
  readonly deflection: Deflection | null;
}

/** What of a build can be worked out: prepared once for all poses and cases. */
export interface StrengthOf {
  readonly at: (found: CaseAt) => Strength;
  /** null = there is one. */
  readonly noFrame: Extract<KnuckleFrameResult, { readonly ok: false }>["why"] | null;
}

/** null = the setup has no build. The build's materials are all known. */
export function strengthOf(setup: Setup, catalog: readonly Material[]): StrengthOf | null {
  const { build, knuckle } = setup;
  if (build === null) return null;
  const materials = new Materials(build, catalog);
  const made = knuckleFrameOf(build, knuckle);
  const frame = made.ok ? made.frame : null;
  // Without a frame nobody works out what is inboard of a joint on the pin: then all of it is free.
  const heldTo = frame === null ? (build.pin?.steps[0]?.from ?? 0) : pinHeldTo(build, knuckle);
  const at = (found: CaseAt): Strength => {
    const outside = outsideForces(found);
    const loads = knuckleLoads(build, knuckle, outside);
    const share = (vonMises: number, material: string | null) => {
      const known = materials.named(material);
      return { shareOfYield: vonMises / known.yield, material: known.name };
    };
    const stresses: Stress[] = [];
    if (build.pin && loads)
      for (const { at, place, nominal, vonMises } of pinStresses(build.pin, knuckle, loads, heldTo))
        stresses.push({
          kind: "pin",
          member: "pin",
          at,
          place,
          vonMises,
          nominal,
          ...share(vonMises, build.pin.material),
        });
    stresses.push(...jointStresses(build, setup, outside, share));
    if (frame === null || loads === null) return { stresses, deflection: null };
    const answer = frame.under(loads);
    for (const { kind, member, at, nominal, vonMises, material } of memberStresses(frame, answer))
      stresses.push({
        kind,
        member,
        at,
        place: kind === "pin" ? "inside the knuckle" : null,
        vonMises,
        nominal,
        ...share(vonMises, material),
      });
    for (const { member, end, throat, material } of weldStresses(build.welds, frame, answer)) {
      const vonMises = Math.sqrt(3) * throat;
      stresses.push({
        kind: "weld",
        member,
        at: end,
        place: null,
        vonMises,
        nominal: vonMises,
        ...share(vonMises, material),
      });
    }
    return { stresses, deflection: deflectionOf(setup, frame, loads, answer.motion) };
  };
  return { at, noFrame: made.ok ? null : made.why };
}

function outsideForces(found: CaseAt) {
  const { linkage, support, applied } = found;
  const { x, y, z } = linkage.knuckle;
  const turned = (v: Vec3): Vec3 => [dot(v, x), dot(v, y), dot(v, z)];
  const placed = (p: Vec3): Vec3 =>
    turned([0, 1, 2].map((i) => p[i]! - linkage.lowerBallJoint[i]!) as unknown as Vec3);
  return {
    lowerBallJoint: turned(support.lowerBallJoint),
    upperBallJoint: turned(support.upperBallJoint),
    tieRodOuter: turned(support.tieRod),
    onHub: allOf(applied).map(({ at, force, moment }) => ({
      at: placed(at),
      force: turned(force),
      ...(moment ? { moment: turned(moment) } : {}),
    })),
    up: turned([0, 0, 1]),
  };
}

type Share = (vonMises: number, material: string | null) => Pick<Stress, "shareOfYield" | "material">;

function jointStresses(
  build: BuildSetup,
  { limits }: Setup,
  forces: Readonly<Record<JointName, Vec3>>,
  share: Share,
): Stress[] {
  const alongAxis: Vec3 = [0, 0, 1];
  const directions: Readonly<Record<JointName, Vec3>> = {
    lowerBallJoint: limits?.lowerBallJoint?.stud ?? alongAxis,
    upperBallJoint: limits?.upperBallJoint?.stud ?? alongAxis,
    tieRodOuter: limits?.outerTieRodEnd?.stud ?? alongAxis,
  };
  const told = (
    kind: "stud" | "rodEnd",
    joint: JointName,
    vonMises: number,
    material: string | null,
  ): Stress => ({
    kind,
    member: joint,
    at: kind === "stud" ? "large end of the taper" : "where the shank is held",
    place: null,
    vonMises,
    nominal: vonMises,
    ...share(vonMises, material),
  });
  return [
    ...build.studs.map((stud) =>
      told("stud", stud.joint, studStress(stud, directions[stud.joint], forces[stud.joint]), stud.material),
    ),
    ...build.rodEnds.map((end) =>
      told("rodEnd", end.joint, rodEndStress(end, forces[end.joint]), end.material),
    ),
  ];
}

/** The hub stands on the line through both bearings as they have moved. */
function deflectionOf(
  { build, knuckle }: Setup,
  { innerBearing, outerBearing }: KnuckleFrame,
  { up }: KnuckleLoads,
  motion: Float64Array,
): Deflection {
  const { inner, outer } = build!.pin!.bearings!;
  const moved = (node: number): Vec3 => [motion[6 * node]!, motion[6 * node + 1]!, motion[6 * node + 2]!];
  const [a, b] = [moved(innerBearing), moved(outerBearing)];
  const tilt = ([0, 1, 2] as const).map((i) => (b[i] - a[i]) / (outer - inner)) as unknown as Vec3;
  const face = ([0, 1, 2] as const).map((i) => a[i] + tilt[i] * (knuckle.hubFace - inner)) as unknown as Vec3;
  const lean = dot(pinDirection(knuckle), up);
  return { hubFace: length(face), camber: -dot(tilt, up) / Math.sqrt(1 - lean * lean) };
}
