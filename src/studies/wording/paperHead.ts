import type { OrderSetup } from "../../setup/types/orderTypes.ts";
import type { Setup } from "../../setup/types/types.ts";
import { knuckleFields, type OrderedField } from "../order/orderedFields.ts";
import { upper } from "./nameWords.ts";
import { madeWords } from "./orderTexts.ts";

/** What every paper of a knuckle says of it before all else, on the page and from the command line alike. */
export interface PaperHead {
  /** What the part is: `drop knuckle as ordered`, `not yet as ordered`, `order not complete`. */
  readonly part: string;
  /** Whose it is and how many: `Order TS-014, Tamarack Street, 1 pair, left and right`; "" = there is no order. */
  readonly order: string;
  /** `For Fern Street half-ton, variant “one inch more drop”`. */
  readonly truck: string;
}

/** The head of all papers of a setup's knuckle. Whether it is as ordered is told by its own numbers, not by the truck's others. */
export function paperHead(setup: Setup): PaperHead {
  const { order, name, variant } = setup;
  return {
    part: partWords(setup),
    order: order === null ? "" : orderWords(order),
    truck: `For ${variant === null ? name : `${name}, variant “${variant}”`}`,
  };
}

function partWords(setup: Setup): string {
  const { order } = setup;
  if (order === null) return "knuckle";
  const part = (order.drop ?? 0) > 0 ? "drop knuckle" : "knuckle";
  const fields = knuckleFields(setup, order);
  if (fields.some(({ agrees }) => !agrees)) return `${part}, not yet as ordered`;
  return isWhole(fields, setup) ? `${part} as ordered` : `${part}, order not complete`;
}

/** What makes a knuckle: an order that leaves one of these open orders none. */
const MAKES = ["span", "pinHeight", "pinAngle", "hubFace", "steeringArm"];

/** Whether an order tells all that makes the knuckle; a lead of the pin only where there is one. */
function isWhole(fields: readonly OrderedField[], { knuckle }: Setup): boolean {
  const needed = knuckle.pinLead === 0 ? MAKES : [...MAKES, "pinLead"];
  return needed.every((key) => fields.some(({ path }) => path[1] === key));
}

function orderWords({ number, customer, side, quantity }: OrderSetup): string {
  return [
    number === null ? "Order without a number" : `Order ${number}`,
    ...(customer === null ? [] : [customer]),
    madeWords(side, quantity),
  ].join(", ");
}

/** The lines under a paper's title. */
export function paperLines({ order, truck }: PaperHead): readonly string[] {
  return order === "" ? [truck] : [order, truck];
}

/** The same in one line, where there is but one. */
export function paperLine(head: PaperHead): string {
  return paperLines(head).join(" · ");
}

/** What the drawings of a knuckle are called. */
export function drawingTitles({ part }: PaperHead) {
  return {
    drawing: upper(part),
    cutList: cutListTitle(part),
    templates: `Notch templates: ${part}`,
    plates: `Plates: ${part}`,
    jig: jigTitle(part),
    solid: `Left knuckle: ${part}`,
  };
}

/** What is written over a jig sheet. @param part as in `PaperHead` */
export function jigTitle(part: string): string {
  return `Jig sheet: ${part}`;
}

/** @param part as in `PaperHead` */
export function cutListTitle(part: string, page = 1, pages = 1): string {
  return `Cut list: ${part}${pages > 1 ? `, sheet ${page} of ${pages}` : ""}`;
}
