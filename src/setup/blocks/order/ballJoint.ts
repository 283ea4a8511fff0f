import type * as z from "zod";
import { parseTaper } from "../../../units/taper.ts";
import { block } from "../../fields/blockFields.ts";
import { lengthField, notationField, textField } from "../../fields/fields.ts";
import type { BlockReading } from "../../reading/blockReading.ts";
import type { Chosen, OrderedJoint } from "../../types/orderTypes.ts";

/** A taper as typed. */
function taperField(description: string) {
  return notationField(description, parseTaper);
}

/** What a ball joint is, in an order and in a catalog. */
export const jointShape = {
  taper: taperField(
    'taper of its stud: inches per foot such as "1.5 in/ft", included angle such as "7.15°", or "1:8"',
  ).optional(),
  studLength: lengthField(
    "from the large end of the stud's taper to the end of its thread",
    "positive",
  ).optional(),
  housingDiameter: lengthField("diameter of its housing at the widest", "positive").optional(),
  housingHeight: lengthField("height of its housing, boot included", "positive").optional(),
};

/** A ball joint of an order, as typed. @param which "upper" or "lower" */
export function jointField(which: string) {
  return block(
    `the ${which} ball joint the knuckle is made for; housing diameter and height write hardware.${which}BallJoint`,
    {
      item: textField("name of a ball joint in the catalog; numbers given here go before its own").optional(),
      ...jointShape,
      seat: taperField("taper reamed into the knuckle for the stud; default the stud's").optional(),
    },
  );
}

type JointAsTyped = z.infer<ReturnType<typeof jointField>>;

/** mm and radians. */
export function resolveJoint(
  typed: Omit<JointAsTyped, "item" | "seat">,
  reading: BlockReading,
): OrderedJoint {
  return {
    taper: taperOf(typed.taper),
    studLength: reading.lengthOr(null, typed.studLength, "studLength"),
    housingDiameter: reading.lengthOr(null, typed.housingDiameter, "housingDiameter"),
    housingHeight: reading.lengthOr(null, typed.housingHeight, "housingHeight"),
  };
}

/** The same with its seat and its catalog name. */
export function resolveChosenJoint(
  typed: JointAsTyped = {},
  reading: BlockReading,
): Chosen<OrderedJoint> & { readonly seat: number | null } {
  return { ...resolveJoint(typed, reading), item: typed.item ?? null, seat: taperOf(typed.seat) };
}

function taperOf(typed: string | undefined): number | null {
  if (typed === undefined) return null;
  const parsed = parseTaper(typed);
  if (!parsed.ok) throw new TypeError(`resolveJoint: shape was not checked: ${parsed.mend}`);
  return parsed.included;
}
