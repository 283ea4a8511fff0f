import type { LengthFormat } from "../../units/formatLength.ts";
import type { OrderSheet } from "../order/orderSheet.ts";
import { fieldName } from "./fieldName.ts";
import { orderMisfitSentence, orderPlaceWords } from "./orderMends.ts";
import { comesOf, orderedText } from "./orderTexts.ts";

/** The button that shows what putting an order into its truck changes. */
export const PUT_ORDER = "Put the order into the truck…";

/** What stands beside that button while an order is typed: that the order counts for nothing yet, or that it does. */
export function orderStandsSentence({ fields }: OrderSheet): string {
  const differ = fields.filter(({ agrees }) => !agrees).length;
  if (fields.length === 0) return "";
  if (differ === 0) return "The order and the truck agree: every answer holds for both.";
  return `The order is not in the truck yet: ${differ} ${differ === 1 ? "number differs" : "numbers differ"}, and every answer goes by the truck.`;
}

/** An order where it is folded away: its number, and whether it is in the truck. */
export function orderStandsBriefly({ order, fields }: OrderSheet): string {
  const differ = fields.filter(({ agrees }) => !agrees).length;
  const number = order.number ?? "begun";
  if (fields.length === 0) return number;
  return differ === 0 ? `${number}, in the truck` : `${number}, not in the truck yet`;
}

/** Sentences under the sheet on the page, in the words of its fields: as `orderRemarks`, but each number that differs a short line. */
export function orderPageRemarks(sheet: OrderSheet, format: LengthFormat): readonly string[] {
  const { fields, open, misfits } = sheet;
  const changes = orderChanges(sheet, format);
  const differ =
    changes.length === 1
      ? "1 number differs from the truck’s, which answers go by"
      : `${changes.length} numbers differ from the truck’s, which answers go by`;
  const standing =
    changes.length === 0
      ? [
          `The truck’s knuckle, wheel and moving parts say what the order says, in all ${fields.length} numbers it fixes.`,
        ]
      : [
          `${differ}: “${PUT_ORDER}” changes ${changes.length === 1 ? "it" : "them"}.`,
          ...changes.map(
            ({ label, from, to, why }) =>
              `${label}: ${to} ordered, ${from} on the truck${why === "" ? "" : ` (${why})`}`,
          ),
        ];
  return [
    ...misfits.map((misfit) => `Does not go together: ${orderMisfitSentence(misfit, format, true)}`),
    ...(fields.length === 0 ? [] : standing),
    ...(open.length === 0 ? [] : [`The order does not say: ${open.map(orderPlaceWords).join("; ")}.`]),
  ];
}

/** One field that writing an order changes: what it is called, what stands there and what will. */
export interface OrderChange {
  readonly label: string;
  readonly from: string;
  readonly to: string;
  /** What the number that will stand there comes of; "" = the order says it itself. */
  readonly why: string;
}

/** What will change when the order is written into the blocks. */
export function orderChanges({ fields, parts }: OrderSheet, format: LengthFormat): readonly OrderChange[] {
  return fields.flatMap((field) => {
    const { path, agrees, ordered, block } = field;
    if (agrees) return [];
    const name = fieldName(path, {});
    const part = path[1] === "rotor" || path[1] === "caliper" ? String(path[1]) : "";
    const isSaid = part === "" || name.toLowerCase().startsWith(part);
    const label = isSaid ? name : `${part.charAt(0).toUpperCase()}${part.slice(1)}: ${name.toLowerCase()}`;
    const why = comesOf(field, parts, format);
    return [{ label, from: orderedText(block, format), to: orderedText(ordered, format), why }];
  });
}
