import { solvePose } from "../../suspension/solvePose.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import type { Model } from "../model/model.ts";
import { armLean, spanEffect } from "./spanEffect.ts";
import { isUsual, type Unusual, type UsualRange } from "./unusual.ts";

const degrees = (least: number, most: number): UsualRange => ({
  least: (least / 180) * Math.PI,
  most: (most / 180) * Math.PI,
});

/** Arms as measured, front view, + = ball joint higher than the pivots. Common practice, no source. */
const ARM_LEANS = { upperArm: degrees(-40, 40), lowerArm: degrees(-32, 32) } as const;

/** Kingpin inclination and caster of a truck as it stands. Common practice, no source. */
const KINGPIN = degrees(0, 22);
const CASTER = degrees(-8, 15);

/** Camber of a truck as it stands, before it is aligned. Common practice, no source. */
const CAMBER = degrees(-9, 9);

/** mm. Taller ball joints and spindles lift the upper joint by up to about an inch. Common practice, no source. */
const SPAN_OFF: UsualRange = { least: -1.25 * MM_PER_INCH, most: 1.25 * MM_PER_INCH };

/** mm. A tie rod runs nearly straight across; one from ahead of the axle line to behind it is a mix-up. */
const ACROSS = 6 * MM_PER_INCH;

/** Angles of the arms as measured. */
export function leaningArms({ setup }: Model): readonly Unusual[] {
  return (["upperArm", "lowerArm"] as const).flatMap((arm): readonly Unusual[] => {
    const value = armLean(setup.truck[arm]);
    const range = ARM_LEANS[arm];
    return isUsual(value, range)
      ? []
      : [ofAngle("armAngle", value, range, ["truck", arm, "ballJoint"], ["truck", arm, "frontPivot"])];
  });
}

/** The steering axis as the knuckle stands: kingpin inclination and caster. */
export function leaningAxis({ frontEnd }: Model): readonly Unusual[] {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return [];
  const { kingpinInclination, caster } = pose.left;
  const upper = ["truck", "upperArm", "ballJoint"] as const;
  const lower = ["truck", "lowerArm", "ballJoint"] as const;
  return [
    ...(isUsual(kingpinInclination, KINGPIN)
      ? []
      : [ofAngle("steeringAxis", kingpinInclination, KINGPIN, [...upper, 1], [...lower, 1])]),
    ...(isUsual(caster, CASTER)
      ? []
      : [ofAngle("steeringAxis", caster, CASTER, [...upper, 0], [...lower, 0])]),
  ];
}

/** The wheel's lean as the truck stands. */
export function leaningWheel({ frontEnd }: Model): readonly Unusual[] {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok || isUsual(pose.left.camber, CAMBER)) return [];
  return [
    ofAngle("camber", pose.left.camber, CAMBER, ["knuckle", "pinAngle"], ["truck", "upperArm", "ballJoint"]),
  ];
}

/** A knuckle far taller or shorter than the arms' ball joints are apart. */
export function oddSpan({ setup, frontEnd }: Model): readonly Unusual[] {
  const effect = spanEffect(setup, frontEnd);
  if (effect === null) return [];
  const value = effect.span - effect.apart;
  if (isUsual(value, SPAN_OFF)) return [];
  return [
    {
      check: "span",
      kind: "length",
      value,
      ...SPAN_OFF,
      meant: [],
      beside: effect.apart,
      paths: [
        ["knuckle", "span"],
        ["truck", "upperArm", "ballJoint"],
        ["truck", "lowerArm", "ballJoint"],
      ],
    },
  ];
}

/** Tie rods whose ends lie on opposite sides of the axle line. */
export function crossedTieRod({ setup, frontEnd }: Model): readonly Unusual[] {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return [];
  const { tieRodInner, tieRodOuter, lowerBallJoint } = pose.left;
  const inner = tieRodInner[0] - lowerBallJoint[0];
  const outer = tieRodOuter[0] - lowerBallJoint[0];
  if (inner * outer >= 0 || Math.abs(inner - outer) < ACROSS) return [];
  return [
    {
      check: "tieRodAcross",
      kind: "length",
      value: inner - outer,
      paths: [
        ["truck", "steering", "innerEnd", 0],
        ["knuckle", "steeringArm", 0],
      ],
      least: -ACROSS,
      most: ACROSS,
      beside: null,
      meant: [{ slip: "sign", value: -setup.truck.steering.innerEnd[0] }],
    },
  ];
}

function ofAngle(
  check: Unusual["check"],
  value: number,
  range: UsualRange,
  ...paths: Unusual["paths"]
): Unusual {
  return { check, paths, kind: "angle", value, ...range, meant: [], beside: null };
}
