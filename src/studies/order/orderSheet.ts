import type { Catalogs } from "../../setup/catalogs/readCatalog.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { modelOf } from "../model/model.ts";
import type { Misfit } from "./misfit.ts";
import { misfitsOf } from "./misfits.ts";
import { type OrderedField, orderedFields } from "./orderedFields.ts";
import { type OrderedParts, orderedParts } from "./orderedParts.ts";
import { orderedSetup, wholeBase } from "./orderedSetup.ts";
import { type PinStep, pinSteps } from "./pinSteps.ts";
import { wheelMisfits } from "./wheelMisfits.ts";

/** What the ordered knuckle does to the truck beside the base knuckle on the same arms, mm, at travel 0, straight ahead. */
export interface OrderEffect {
  /** How far the truck comes down: how far the wheel's center is higher on it. */
  readonly lowers: number;
  /** How far each contact patch comes inboard. */
  readonly narrows: number;
}

/** An order worked out; mm and radians. */
export interface OrderSheet {
  readonly setup: Setup;
  readonly order: OrderSetup;
  readonly parts: OrderedParts;
  /** What the order writes into the blocks, beside what they say. */
  readonly fields: readonly OrderedField[];
  readonly pinSteps: readonly PinStep[];
  /** null = the base knuckle is not given whole, or one of the two does not go on the truck. */
  readonly effect: OrderEffect | null;
  /** What does not go together; empty = nothing found. */
  readonly misfits: readonly Misfit[];
  /** What a shop will ask for and the order does not say. */
  readonly open: readonly KeyPath[];
}

/** Works an order out; null = the setup has none. Never throws. */
export function orderSheet(setup: Setup, catalogs: Catalogs, file: string): OrderSheet | null {
  const { order } = setup;
  if (order === null) return null;
  const parts = orderedParts(order, catalogs);
  const fields = orderedFields(setup, order, parts);
  const ordered = orderedSetup(alone(setup), fields);
  const model = modelOf(ordered, file);
  const misfits = [
    ...misfitsOf(setup, order, parts),
    ...(model.ok
      ? wheelMisfits(model.value)
      : model.issues.map((issue): Misfit => ({ at: ["order"], kind: "does not assemble", issue }))),
  ];
  return {
    setup,
    order,
    parts,
    fields,
    pinSteps: pinSteps(parts.hub, order.hubFace ?? setup.knuckle.hubFace),
    effect: effectOf(ordered, order, file),
    misfits,
    open: openFields(order, parts),
  };
}

/** The truck without what no order asks about: body parts, which may be whole scans, and stances. */
function alone(setup: Setup): Setup {
  return { ...setup, truck: { ...setup.truck, body: [] }, stances: [], measuredStances: [] };
}

function effectOf(ordered: Setup, { base }: OrderSetup, file: string): OrderEffect | null {
  const knuckle = wholeBase(base);
  if (knuckle === null) return null;
  const [before, after] = [{ ...ordered, knuckle }, ordered].map((one) => {
    const model = modelOf({ ...one, hardware: null }, file);
    const pose = model.ok ? solvePose(model.value.frontEnd, 0, 0) : null;
    return pose?.ok ? pose.left : null;
  });
  if (!before || !after) return null;
  return {
    lowers: after.wheelCenter[2] - before.wheelCenter[2],
    narrows: before.contactPatch[1] - after.contactPatch[1],
  };
}

/** What a knuckle cannot be made without. */
function openFields(
  order: OrderSetup,
  { upperBallJoint, lowerBallJoint, hub }: OrderedParts,
): readonly KeyPath[] {
  const { base, steeringArm } = order;
  const asked: readonly (readonly [KeyPath, unknown])[] = [
    [["base", "span"], base.span],
    [["base", "pinHeight"], base.pinHeight],
    [["base", "pinAngle"], order.pinAngle ?? base.pinAngle],
    [["base", "steeringArm"], steeringArm.tieRodEnd ?? base.steeringArm],
    [["drop"], order.drop],
    [["hubFace"], order.hubFace],
    [["upperBallJoint", "taper"], upperBallJoint.taper],
    [["lowerBallJoint", "taper"], lowerBallJoint.taper],
    [["hub", "boltPattern"], hub.boltPattern],
    [["hub", "shoulder"], hub.shoulder],
    [["hub", "innerBearing", "bore"], hub.innerBearing.bore],
    [["hub", "outerBearing", "bore"], hub.outerBearing.bore],
    [["hub", "nutThread"], hub.nutThread],
    [["steeringArm", "thread"], steeringArm.thread],
    [["finish"], order.finish],
  ];
  return asked.flatMap(([path, value]) => (value === null ? [["order", ...path]] : []));
}
