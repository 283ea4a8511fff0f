import { keyText } from "../../setup/types/keyPath.ts";
import { formatAngle } from "../../units/angle.ts";
import { boltPatternText } from "../../units/boltPattern.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { taperWords } from "../../units/taper.ts";
import { threadText } from "../../units/threadCallout.ts";
import { visibleText } from "../../units/words.ts";
import { housingRadius } from "../order/orderedFields.ts";
import type { JointAsOrdered } from "../order/orderedParts.ts";
import type { OrderSheet } from "../order/orderSheet.ts";
import { amountWords } from "./lengths.ts";
import { listWords, lower } from "./nameWords.ts";
import { orderMisfitSentence } from "./orderMends.ts";
import {
  differenceSentence,
  engagedThreads,
  madeWords,
  patternWords,
  pointText,
  sizeText,
  threadWords,
} from "./orderTexts.ts";

/** One line of an order sheet. */
export interface OrderRow {
  readonly label: string;
  readonly value: string;
  /** How it is measured, or what follows from it; "" = nothing. */
  readonly note: string;
}

/** Lines of an order sheet that go together, as a shop fills them in. */
export interface OrderGroup {
  readonly title: string;
  /** What the order says. */
  readonly rows: readonly OrderRow[];
  /** What it says nothing of, in one sentence; "" = all is said. */
  readonly notGiven: string;
}

/** A line before it is told: null = the order says nothing of it. */
type Line = Omit<OrderRow, "value"> & { readonly value: string | null };

/** The whole sheet in words, for screen, print and command line. */
export function orderGroups(sheet: OrderSheet, format: LengthFormat): readonly OrderGroup[] {
  const { parts } = sheet;
  return [
    { title: "Truck and stance", rows: truckRows(sheet, format) },
    { title: "Knuckle", rows: knuckleRows(sheet, format) },
    { title: "Upper ball joint", rows: jointRows(parts.upperBallJoint, sheet.setup.units, format) },
    { title: "Lower ball joint", rows: jointRows(parts.lowerBallJoint, sheet.setup.units, format) },
    { title: "Brake", rows: brakeRows(sheet, format) },
    { title: "Hub and wheel", rows: hubRows(sheet, format) },
    { title: "Pin, from the hub face, + outboard", rows: pinRows(sheet, format) },
    { title: "Steering arm", rows: armRows(sheet, format) },
    { title: "Finish and quantity", rows: finishRows(sheet) },
  ].flatMap(({ title, rows }) => (rows.length === 0 ? [] : [groupOf(title, rows)]));
}

function groupOf(title: string, lines: readonly Line[]): OrderGroup {
  const rows = lines.flatMap(({ label, value, note }) => (value === null ? [] : [{ label, value, note }]));
  const open = lines.flatMap(({ label, value }) => (value === null ? [lower(label)] : []));
  return { title, rows, notGiven: open.length === 0 ? "" : `Not given: ${listWords(open)}.` };
}

const row = (label: string, value: string | null, note = ""): Line => ({ label, value, note });

/** What was chosen out of a catalog; a part described by its numbers lacks nothing. */
const itemRow = (label: string, item: string | null): readonly Line[] =>
  item === null ? [] : [row(label, item)];

function truckRows({ setup, order, effect }: OrderSheet, format: LengthFormat): readonly Line[] {
  return [
    row("Order number", order.number),
    row("Customer", order.customer),
    row("Truck", setup.name),
    row("Made for the stance", order.stance),
    ...(effect === null
      ? []
      : [
          effectRow(
            effect.lowers < 0 ? "Truck comes up by" : "Truck comes down by",
            effect.lowers,
            "beside the base knuckle, same arms",
            format,
          ),
          effectRow(
            effect.narrows < 0 ? "Each tire goes out by" : "Each tire comes in by",
            effect.narrows,
            "at the ground, same wheel",
            format,
          ),
        ]),
  ];
}

/** What an order does to the truck, as fine as a tape shows it on the floor; sizes to be made are told as they are. */
function effectRow(label: string, mm: number, note: string, format: LengthFormat): Line {
  return row(label, amountWords(mm, format), note);
}

function knuckleRows({ order, fields }: OrderSheet, format: LengthFormat): readonly Line[] {
  const { base, drop, hubFace } = order;
  const length = (mm: number | null) => (mm === null ? null : sizeText(mm, format));
  const angle = (rad: number | null) => (rad === null ? null : formatAngle(rad, 2));
  const pinHeight = fields.find(({ path }) => path[1] === "pinHeight")?.ordered;
  const narrowed = hubFace === null || base.hubFace === null ? null : base.hubFace - hubFace;
  const from = (mm: string | null) => (mm === null ? "" : `base ${mm}`);
  return [
    row("Base knuckle", base.name),
    row("Ball joint span", length(base.span), "center to center, as the base"),
    row("Drop", length(drop), "pin carried higher, along the steering axis"),
    row(
      "Pin height",
      pinHeight?.kind === "length" ? length(pinHeight.mm) : null,
      from(length(base.pinHeight)),
    ),
    row(
      "Hub-face distance",
      length(hubFace),
      narrowed === null
        ? "steering axis to wheel face, along the pin"
        : `base ${length(base.hubFace)}; narrowed ${length(narrowed)}`,
    ),
    row("Pin angle", angle(order.pinAngle ?? base.pinAngle), "below the normal to the steering axis"),
    row("Pin lead", length(order.pinLead ?? base.pinLead ?? 0), "+ ahead of the steering axis"),
  ];
}

function jointRows(joint: JointAsOrdered, units: FileUnits, format: LengthFormat): readonly Line[] {
  const length = (mm: number | null) => (mm === null ? null : sizeText(mm, format));
  const radius = housingRadius(joint, units);
  return [
    ...itemRow("From the catalog", joint.item),
    row("Stud taper", joint.taper === null ? null : taperWords(joint.taper)),
    row(
      "Ream the knuckle to",
      joint.seat === null ? null : taperWords(joint.seat),
      joint.seatGiven ? "" : "as the stud",
    ),
    row("Stud length", length(joint.studLength), "large end of the taper to the end"),
    row("Housing diameter", length(joint.housingDiameter)),
    row(
      "Housing height",
      length(joint.housingHeight),
      radius === null ? "" : `checked as a ball of radius ${length(radius)} that holds it`,
    ),
  ];
}

function brakeRows({ parts, fields }: OrderSheet, format: LengthFormat): readonly Line[] {
  const { brake } = parts;
  const length = (mm: number | null) => (mm === null ? null : sizeText(mm, format));
  const inboard = fields.find(({ path }) => path[2] === "inboard")?.ordered;
  const holes = brake.bracketHoles ?? [];
  return [
    ...itemRow("From the catalog", brake.item),
    row("Rotor diameter", length(brake.rotorDiameter)),
    row("Rotor thickness", length(brake.rotorThickness)),
    row(
      "Hat offset",
      length(brake.hatOffset),
      inboard?.kind === "length"
        ? `rotor's outboard face ${length(inboard.mm)} inboard of the hub face`
        : "seat to the rotor's outboard face",
    ),
    row("Hat bore", length(brake.hatRegister), "centers the rotor on the hub"),
    row("Rotor bolt pattern", brake.boltPattern && boltPatternText(brake.boltPattern)),
    row(
      "Caliper box",
      brake.caliper && `${pointText(brake.caliper.min, format)} to ${pointText(brake.caliper.max, format)}`,
      "forward, outboard, up from the middle of the rotor's seat",
    ),
    ...holes.map((hole, i) => row(`Bracket hole ${i + 1}`, pointText(hole, format), "in the same axes")),
    row(
      "Bracket thread",
      brake.bracketThread && threadText(brake.bracketThread),
      brake.bracketThread ? threadWords(brake.bracketThread, format) : "",
    ),
    row("Least rim diameter", length(brake.leastRim)),
  ];
}

function hubRows({ order, parts }: OrderSheet, format: LengthFormat): readonly Line[] {
  const { hub } = parts;
  const { wheel } = order;
  const length = (mm: number | null) => (mm === null ? null : sizeText(mm, format));
  const seat = wheel.backspacing === null ? wheel.offset : wheel.backspacing;
  const rim =
    wheel.rimDiameter === null || wheel.rimWidth === null
      ? null
      : `${length(wheel.rimDiameter)} × ${length(wheel.rimWidth)}`;
  return [
    ...itemRow("Hub from the catalog", hub.item),
    row(
      "Hub bolt pattern",
      hub.boltPattern && boltPatternText(hub.boltPattern),
      hub.boltPattern ? patternWords(hub.boltPattern, format).replace(/^[^:]*: /, "") : "",
    ),
    row("Wheel pilot", length(hub.pilot), "centers the wheel"),
    row("Rotor register", length(hub.register), "centers the rotor"),
    row("Rotor seat", length(hub.rotorSeat), "inboard of the hub face"),
    row("Wheel", rim, wheel.barrelDiameter === null ? "" : `barrel ${length(wheel.barrelDiameter)}`),
    row(wheel.backspacing === null ? "Wheel offset" : "Wheel backspacing", length(seat)),
    row("Wheel bolt pattern", wheel.boltPattern && boltPatternText(wheel.boltPattern)),
    row("Wheel center bore", length(wheel.centerBore)),
  ];
}

function pinRows({ pinSteps, parts }: OrderSheet, format: LengthFormat): readonly Line[] {
  const bearings = {
    "inner bearing": parts.hub.innerBearing,
    "outer bearing": parts.hub.outerBearing,
  } as const;
  return pinSteps.map(({ name, from, to, diameter }) => {
    const number = name === "inner bearing" || name === "outer bearing" ? bearings[name].number : null;
    const note = name === "nut thread" ? threadText(parts.hub.nutThread!) : (number ?? "");
    const label = name.charAt(0).toUpperCase() + name.slice(1);
    const between = name === "between bearings" ? "no thinner than this" : note;
    return row(
      label,
      `${sizeText(diameter, format)} dia., ${sizeText(from, format)} to ${sizeText(to, format)}`,
      between,
    );
  });
}

function armRows({ order }: OrderSheet, format: LengthFormat): readonly Line[] {
  const { steeringArm, base } = order;
  const { thread, engagement } = steeringArm;
  const length = (mm: number | null) => (mm === null ? null : sizeText(mm, format));
  const end = steeringArm.tieRodEnd ?? base.steeringArm;
  return [
    row(
      "Outer tie rod end",
      end && pointText(end, format),
      "forward, outboard, up from the lower ball joint",
    ),
    row("Thread in the arm", thread && threadText(thread), thread ? threadWords(thread, format) : ""),
    row(
      "Rod end thread",
      (steeringArm.rodEndThread ?? thread) && threadText((steeringArm.rodEndThread ?? thread)!),
    ),
    row(
      "Thread engaged",
      length(engagement),
      engagement !== null && thread !== null
        ? `${engagedThreads(engagement, thread)}, ${Number((engagement / thread.diameter).toFixed(2))} diameters`
        : "",
    ),
    row("Jam nut", length(steeringArm.jamNut), "thickness"),
    row("Rod end shank", length(steeringArm.shank), "threaded length"),
  ];
}

function finishRows({ order }: OrderSheet): readonly Line[] {
  return [
    row("Finish", order.finish),
    row("Made", madeWords(order.side, order.quantity)),
    row("Notes", order.notes),
  ];
}

/** Sentences under the sheet: what does not go together, where blocks disagree with the order, and what it leaves open. */
export function orderRemarks(
  { fields, parts, open, misfits }: OrderSheet,
  format: LengthFormat,
): readonly string[] {
  const apart = fields.filter(({ agrees }) => !agrees);
  const differences = apart.map((field) => differenceSentence(keyText(field.path), field, parts, format));
  const agreed = `The knuckle, wheel and hardware blocks say what the order says, in all ${fields.length} fields it fixes.`;
  return [
    ...misfits.map((misfit) => `Does not go together: ${orderMisfitSentence(misfit, format, true)}`),
    ...(fields.length === 0 ? [] : apart.length === 0 ? [agreed] : differences),
    ...(open.length === 0 ? [] : [`The order does not say: ${open.map(keyText).join(", ")}.`]),
  ];
}

/** That the blocks are written. @param file as the user named it */
export function orderWrittenSentence(file: string): string {
  return `Written: ${visibleText(file)}, its knuckle, wheel and hardware blocks as ordered.`;
}
