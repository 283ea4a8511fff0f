import * as z from "zod";
import { block } from "../../fields/blockFields.ts";
import { angleField, choiceField, lengthField, pointField, textField } from "../../fields/fields.ts";
import type { BlockReading } from "../../reading/blockReading.ts";
import { MAX_NOTE, MAX_QUANTITY_ORDERED } from "../../reading/limits.ts";
import { DEFAULT_ORDERED_QUANTITY, DEFAULT_ORDERED_SIDE } from "../../types/defaults.ts";
import type { BaseKnuckle, OrderSetup } from "../../types/orderTypes.ts";
import { jointField, resolveChosenJoint } from "./ballJoint.ts";
import { brakeField, resolveChosenBrake } from "./brake.ts";
import { hubField, resolveChosenHub } from "./hub.ts";
import { orderedArmField, orderedWheelField, resolveOrderedArm, resolveOrderedWheel } from "./madeFor.ts";

const PIN_ANGLES = { above: -45, below: 45 } as const;

const QUANTITY_MEND = `must be a whole number from 1 to ${MAX_QUANTITY_ORDERED}`;

const baseField = block("the knuckle the order starts from, in its own frame", {
  name: textField("what it is called").optional(),
  span: lengthField("lower to upper ball joint center", "positive").optional(),
  pinHeight: lengthField(
    "along the steering axis from the lower ball joint to where the pin axis crosses, seen from the front",
  ).optional(),
  pinAngle: angleField(
    "pin axis below the normal to the steering axis, degrees (the included angle)",
    PIN_ANGLES,
  ).optional(),
  pinLead: lengthField("how far the pin axis runs ahead of the steering axis; default 0").optional(),
  hubFace: lengthField(
    "from the steering axis to the wheel mounting face, along the pin, at pin height",
    "positive",
  ).optional(),
  steeringArm: pointField("center of the outer tie rod end in the knuckle frame").optional(),
});

/** The order of a drop knuckle, as typed. All of it may be left out: an order is filled in bit by bit. */
export const orderField = block(
  "the order of a drop knuckle; it writes the knuckle, wheel and hardware blocks, which answers are worked out from",
  {
    number: textField("number of the order").optional(),
    customer: textField("who it is for").optional(),
    stance: textField("the height it is made for: one of this setup's stances").optional(),
    base: baseField.optional(),
    drop: lengthField(
      "how far the pin is carried higher than on the base knuckle, along the steering axis",
    ).optional(),
    hubFace: lengthField(
      "ordered hub face: from the steering axis to the wheel mounting face, along the pin, at pin height",
      "positive",
    ).optional(),
    pinAngle: angleField("ordered pin angle, degrees; default the base knuckle's", PIN_ANGLES).optional(),
    pinLead: lengthField("ordered pin lead; default the base knuckle's").optional(),
    upperBallJoint: jointField("upper").optional(),
    lowerBallJoint: jointField("lower").optional(),
    brake: brakeField.optional(),
    hub: hubField.optional(),
    wheel: orderedWheelField.optional(),
    steeringArm: orderedArmField.optional(),
    finish: textField("how the part is to be finished").optional(),
    notes: textField("anything else the shop should know, on one line", MAX_NOTE).optional(),
    side: choiceField("which sides are made: left, right or a pair; default pair", [
      "pair",
      "left",
      "right",
    ]).optional(),
    quantity: z
      .number({ error: QUANTITY_MEND })
      .int({ error: QUANTITY_MEND })
      .min(1, { error: QUANTITY_MEND })
      .max(MAX_QUANTITY_ORDERED, { error: QUANTITY_MEND })
      .meta({ description: "how many, of a pair how many pairs; default 1" })
      .optional(),
  },
);

type OrderAsTyped = z.infer<typeof orderField>;

/** The block in mm and radians; null = the setup has none. */
export function resolveOrder(typed: OrderAsTyped | undefined, reading: BlockReading): OrderSetup | null {
  if (typed === undefined) return null;
  return {
    number: typed.number ?? null,
    customer: typed.customer ?? null,
    stance: typed.stance ?? null,
    base: resolveBase(typed.base, reading.inside("base")),
    drop: reading.lengthOr(null, typed.drop, "drop"),
    hubFace: reading.lengthOr(null, typed.hubFace, "hubFace"),
    pinAngle: typed.pinAngle === undefined ? null : reading.angle(typed.pinAngle),
    pinLead: reading.lengthOr(null, typed.pinLead, "pinLead"),
    upperBallJoint: resolveChosenJoint(typed.upperBallJoint, reading.inside("upperBallJoint")),
    lowerBallJoint: resolveChosenJoint(typed.lowerBallJoint, reading.inside("lowerBallJoint")),
    brake: resolveChosenBrake(typed.brake, reading.inside("brake")),
    hub: resolveChosenHub(typed.hub, reading.inside("hub")),
    wheel: resolveOrderedWheel(typed.wheel, reading.inside("wheel")),
    steeringArm: resolveOrderedArm(typed.steeringArm, reading.inside("steeringArm")),
    finish: typed.finish ?? null,
    notes: typed.notes ?? null,
    side: typed.side ?? DEFAULT_ORDERED_SIDE,
    quantity: typed.quantity ?? DEFAULT_ORDERED_QUANTITY,
  };
}

function resolveBase(typed: z.infer<typeof baseField> = {}, reading: BlockReading): BaseKnuckle {
  const { steeringArm } = typed;
  return {
    name: typed.name ?? null,
    span: reading.lengthOr(null, typed.span, "span"),
    pinHeight: reading.lengthOr(null, typed.pinHeight, "pinHeight"),
    pinAngle: typed.pinAngle === undefined ? null : reading.angle(typed.pinAngle),
    pinLead: reading.lengthOr(null, typed.pinLead, "pinLead"),
    hubFace: reading.lengthOr(null, typed.hubFace, "hubFace"),
    steeringArm: steeringArm === undefined ? null : reading.point(steeringArm, "steeringArm"),
  };
}
