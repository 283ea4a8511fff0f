import type * as z from "zod";
import { block } from "../../fields/blockFields.ts";
import { lengthField, textField } from "../../fields/fields.ts";
import type { BlockReading } from "../../reading/blockReading.ts";
import type { Chosen, OrderedBearing, OrderedHub } from "../../types/orderTypes.ts";
import { boltPatternField, boltPatternOf, threadField, threadOf } from "./boltedNotations.ts";

function bearingField(which: string) {
  return block(`the ${which} wheel bearing`, {
    number: textField("what it is sold as").optional(),
    bore: lengthField("its bore: the pin's diameter there", "positive").optional(),
    width: lengthField("its width along the pin", "positive").optional(),
  });
}

/** What a hub with its bearings is, in an order and in a catalog. */
export const hubShape = {
  boltPattern: boltPatternField("its wheel studs, such as 5x5, 6 x 5 1/2 or 5x127").optional(),
  pilot: lengthField("diameter that centers the wheel", "positive").optional(),
  register: lengthField("diameter that centers the rotor's hat", "positive").optional(),
  rotorSeat: lengthField(
    "from the hub face inboard to the face that the rotor's hat sits on; 0 where both are one face",
  ).optional(),
  shoulder: lengthField(
    "from the hub face inboard, along the pin, to the shoulder that the inner bearing sits against",
    "positive",
  ).optional(),
  sealDiameter: lengthField(
    "diameter of the pin inboard of the shoulder, where the seal runs",
    "positive",
  ).optional(),
  innerBearing: bearingField("inner").optional(),
  outerBearing: bearingField("outer").optional(),
  outerSeat: lengthField(
    "from the hub face inboard, along the pin, to the inboard end of the outer bearing",
  ).optional(),
  nutThread: threadField("thread of the nut at the pin's end, such as 3/4-16").optional(),
  pinEnd: lengthField("from the hub face outboard, along the pin, to the pin's end").optional(),
};

/** Hub and bearings of an order, as typed. */
export const hubField = block("hub and bearings: they fix the pin's steps, and where the rotor sits", {
  item: textField("name of a hub set in the catalog; numbers given here go before its own").optional(),
  ...hubShape,
});

type HubAsTyped = z.infer<typeof hubField>;

/** mm. */
export function resolveHub(typed: Omit<HubAsTyped, "item">, reading: BlockReading): OrderedHub {
  const bearing = (key: "innerBearing" | "outerBearing"): OrderedBearing => ({
    number: typed[key]?.number ?? null,
    bore: reading.lengthOr(null, typed[key]?.bore, key, "bore"),
    width: reading.lengthOr(null, typed[key]?.width, key, "width"),
  });
  return {
    boltPattern: boltPatternOf(typed.boltPattern),
    pilot: reading.lengthOr(null, typed.pilot, "pilot"),
    register: reading.lengthOr(null, typed.register, "register"),
    rotorSeat: reading.lengthOr(null, typed.rotorSeat, "rotorSeat"),
    shoulder: reading.lengthOr(null, typed.shoulder, "shoulder"),
    sealDiameter: reading.lengthOr(null, typed.sealDiameter, "sealDiameter"),
    innerBearing: bearing("innerBearing"),
    outerBearing: bearing("outerBearing"),
    outerSeat: reading.lengthOr(null, typed.outerSeat, "outerSeat"),
    nutThread: threadOf(typed.nutThread),
    pinEnd: reading.lengthOr(null, typed.pinEnd, "pinEnd"),
  };
}

/** The same with its catalog name. */
export function resolveChosenHub(typed: HubAsTyped = {}, reading: BlockReading): Chosen<OrderedHub> {
  return { ...resolveHub(typed, reading), item: typed.item ?? null };
}
