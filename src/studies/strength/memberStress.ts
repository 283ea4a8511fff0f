import type { WeldSetup } from "../../setup/types/buildTypes.ts";
import { type FrameAnswer, sectionForces } from "./frame.ts";
import type { KnuckleFrame, Piece } from "./knuckleFrame.ts";
import { combinedStress, NO_RISE, type SectionForces } from "./roundSection.ts";

/** The end of a stretch of a member under load. */
export interface MemberPlace {
  readonly kind: Piece["kind"];
  readonly member: string;
  /** As of a `Piece`. */
  readonly at: string | number;
  readonly forces: SectionForces;
  /** Of the plain section, MPa; and as a shoulder of the pin raises it. */
  readonly nominal: number;
  readonly vonMises: number;
  /** null = as the build's. */
  readonly material: string | null;
}

/** Both ends of every stretch: in between bending is straight from one to the other. */
export function memberStresses({ pieces }: KnuckleFrame, answer: FrameAnswer): readonly MemberPlace[] {
  return pieces.flatMap(({ kind, name, beam, section, rise, material, ...ends }) =>
    (["from", "to"] as const).map((end) => {
      const forces = sectionForces(answer.ends[beam]!, end);
      const nominal = combinedStress(section, forces);
      const vonMises = combinedStress(section, forces, end === "from" ? rise : NO_RISE);
      return { kind, member: name, at: ends[end], forces, nominal, vonMises, material };
    }),
  );
}

/** A weld under load: what its throat carries, MPa, all of it as shear. */
export interface WeldPlace {
  readonly member: string;
  readonly end: WeldSetup["end"];
  readonly throat: number;
  readonly material: string | null;
}

/** Throat of an equal-leg fillet by its leg: cos 45°. */
const THROAT = Math.SQRT1_2;

/**
 * Stress on the throat of a fillet all round a tube or bar, the weld treated as a line of its throat's width: A = π d t,
 * I/c = π d² t / 4, J/c = π d² t / 2 (Shigley, Tables 9-1 and 9-2, from memory: 1.414 π h r, π r³ and 2 π r³ by 0.707 h). Pull and
 * bending and the two shears are added as at right angles, and all is taken as shear on the throat, as is usual.
 */
export function weldStresses(
  welds: readonly WeldSetup[],
  { pieces }: KnuckleFrame,
  answer: FrameAnswer,
): readonly WeldPlace[] {
  return welds.flatMap(({ member, end, leg }) => {
    // Only the first stretch starts at a joint's name, and only the last ends at one.
    const piece = pieces.find((one) => one.name === member && typeof one[end] === "string");
    if (!piece) return [];
    const { section, material, beam } = piece;
    const throat = throatStress(section.diameter, leg, sectionForces(answer.ends[beam]!, end));
    return [{ member, end, throat, material }];
  });
}

/** @param diameter of the member; @param leg of the fillet, mm */
export function throatStress(
  diameter: number,
  leg: number,
  { pull, shear, bending, torque }: SectionForces,
): number {
  const throat = THROAT * leg;
  const area = Math.PI * diameter * throat;
  const bent = bending / ((Math.PI * diameter ** 2 * throat) / 4);
  const twisted = Math.abs(torque) / ((Math.PI * diameter ** 2 * throat) / 2);
  return Math.hypot(Math.abs(pull) / area + bent, shear / area + twisted);
}
