import { keyText } from "../../setup/types/keyPath.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import { degFromRad } from "../../units/angle.ts";
import {
  type BoltPattern,
  boltPatternText,
  holeDistance,
  holeDistanceAcross,
} from "../../units/boltPattern.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { perFootFromIncluded } from "../../units/taper.ts";
import {
  minorDiameter,
  pitchDiameter,
  stressArea,
  type ThreadCallout,
  tapDrill,
  threadText,
} from "../../units/threadCallout.ts";
import { housingRadius, type OrderedValue } from "../order/orderedFields.ts";
import type { JointAsOrdered } from "../order/orderedParts.ts";
import type { OrderSheet } from "../order/orderSheet.ts";
import { pointFromMm } from "./documentText.ts";

/** An order as `order --json` prints it: lengths in the file's units, angles in degrees; null = not given. */
export function orderJson(sheet: OrderSheet) {
  const { setup, order, parts, fields, effect, open } = sheet;
  const { units } = setup;
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const point = (at: Point | null) => (at === null ? null : pointFromMm(at, units));
  const degrees = (rad: number | null) => (rad === null ? null : degFromRad(rad));
  const { base, wheel, steeringArm } = order;
  const { brake, hub } = parts;
  const pattern = (one: BoltPattern | null) =>
    one && {
      text: boltPatternText(one),
      holes: one.holes,
      circle: length(one.circle),
      betweenNeighbors: length(holeDistance(one, 1)),
      across: length(holeDistanceAcross(one)),
    };
  const thread = (one: ThreadCallout | null) =>
    one && {
      text: threadText(one),
      diameter: length(one.diameter),
      pitch: length(one.pitch),
      hand: one.hand,
      pitchDiameter: length(pitchDiameter(one)),
      minorDiameter: length(minorDiameter(one)),
      stressArea: units === "in" ? stressArea(one) / 25.4 ** 2 : stressArea(one),
      tapDrill: length(tapDrill(one)),
    };
  const taper = (rad: number | null) =>
    rad === null ? null : { included: degFromRad(rad), inchesPerFoot: perFootFromIncluded(rad) };
  const joint = (one: JointAsOrdered) => ({
    item: one.item,
    taper: taper(one.taper),
    seat: taper(one.seat),
    studLength: length(one.studLength),
    housingDiameter: length(one.housingDiameter),
    housingHeight: length(one.housingHeight),
    radius: length(housingRadius(one, units)),
  });
  const value = (one: OrderedValue | null) => valueJson(one, length, point);
  const ordered = (key: string) => value(fields.find(({ path }) => keyText(path) === key)?.ordered ?? null);
  const engaged = steeringArm.engagement;
  return {
    units,
    number: order.number,
    customer: order.customer,
    truck: setup.name,
    stance: order.stance,
    side: order.side,
    quantity: order.quantity,
    finish: order.finish,
    notes: order.notes,
    knuckle: {
      base: {
        name: base.name,
        span: length(base.span),
        pinHeight: length(base.pinHeight),
        pinAngle: degrees(base.pinAngle),
        pinLead: length(base.pinLead),
        hubFace: length(base.hubFace),
        steeringArm: point(base.steeringArm),
      },
      drop: length(order.drop),
      span: ordered("knuckle.span"),
      pinHeight: ordered("knuckle.pinHeight"),
      pinLead: ordered("knuckle.pinLead"),
      pinAngle: ordered("knuckle.pinAngle"),
      hubFace: ordered("knuckle.hubFace"),
      steeringArm: ordered("knuckle.steeringArm"),
    },
    ballJoints: { upper: joint(parts.upperBallJoint), lower: joint(parts.lowerBallJoint) },
    brake: {
      item: brake.item,
      rotorDiameter: length(brake.rotorDiameter),
      rotorThickness: length(brake.rotorThickness),
      hatOffset: length(brake.hatOffset),
      hatRegister: length(brake.hatRegister),
      boltPattern: pattern(brake.boltPattern),
      rotorInboard: ordered("hardware.rotor.inboard"),
      caliper: brake.caliper && { min: point(brake.caliper.min), max: point(brake.caliper.max) },
      bracketHoles: brake.bracketHoles?.map(point) ?? null,
      bracketThread: thread(brake.bracketThread),
      leastRim: length(brake.leastRim),
    },
    hub: {
      item: hub.item,
      boltPattern: pattern(hub.boltPattern),
      pilot: length(hub.pilot),
      register: length(hub.register),
      rotorSeat: length(hub.rotorSeat),
      nutThread: thread(hub.nutThread),
      pinSteps: sheet.pinSteps.map(({ name, from, to, diameter }) => ({
        name,
        from: length(from),
        to: length(to),
        diameter: length(diameter),
      })),
    },
    wheel: {
      rimDiameter: length(wheel.rimDiameter),
      rimWidth: length(wheel.rimWidth),
      backspacing: length(wheel.backspacing),
      offset: length(wheel.offset),
      barrelDiameter: length(wheel.barrelDiameter),
      boltPattern: pattern(wheel.boltPattern),
      centerBore: length(wheel.centerBore),
    },
    steeringArm: {
      tieRodEnd: ordered("knuckle.steeringArm"),
      thread: thread(steeringArm.thread),
      rodEndThread: thread(steeringArm.rodEndThread ?? steeringArm.thread),
      engagement: length(engaged),
      threadsEngaged:
        engaged === null || steeringArm.thread === null ? null : engaged / steeringArm.thread.pitch,
      jamNut: length(steeringArm.jamNut),
      shank: length(steeringArm.shank),
    },
    onTheTruck: effect && { lowers: length(effect.lowers), narrows: length(effect.narrows) },
    writes: fields.map(({ path, ordered: one }) => ({ field: keyText(path), to: value(one) })),
    differs: fields
      .filter(({ agrees }) => !agrees)
      .map(({ path, ordered: one, block }) => ({
        field: keyText(path),
        order: value(one),
        block: value(block),
      })),
    open: open.map(keyText),
  };
}

function valueJson(
  value: OrderedValue | null,
  length: (mm: number) => number | null,
  point: (at: Point) => Point | null,
) {
  switch (value?.kind) {
    case undefined:
      return null;
    case "length":
      return length(value.mm);
    case "angle":
      return degFromRad(value.rad);
    case "point":
      return point(value.point);
    case "word":
      return value.word;
  }
}
