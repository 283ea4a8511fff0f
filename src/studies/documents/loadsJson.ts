import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit, quantityInUnits } from "../../units/quantity.ts";
import type { LoadsCase, LoadsReport } from "../loads/loadsReport.ts";
import type { Stress } from "../loads/strengthOf.ts";
import type { VariantWeight } from "../strength/variantWeights.ts";
import type { ForceAt } from "../strength/wrench.ts";
import { pointFromMm } from "./documentText.ts";

type Vector = readonly [number, number, number];

/**
 * The loads as `loads --json` prints them: vehicle axes, forces, moments, stresses and weights in the file's units.
 * @param weights of the setup and its variants
 */
export function loadsJson(report: LoadsReport, units: LengthUnit, weights: readonly VariantWeight[]) {
  const { cases, grid, worst, governs, weight, cutShort } = report;
  const length = (mm: number) => unitsFromMm(mm, units);
  return {
    units,
    forceUnit: units === "in" ? "lbf" : "N",
    momentUnit: units === "in" ? "lbf·in" : "N·mm",
    stressUnit: bareUnit("stress", units),
    weightUnit: bareUnit("weight", units),
    ...(cutShort ? { cutShort } : {}),
    cases: cases.map((one) => caseJson(one, units)),
    worst: worst.map(({ name, size, travel, bound, isNear, ...rest }) => ({
      force: name,
      ...rest,
      travel: length(travel),
      size: force(size, units),
      bound: bound === null ? null : force(bound, units),
      near: isNear,
    })),
    grid,
    governs: governs && {
      case: governs.case,
      side: governs.side,
      travel: length(governs.travel),
      steer: governs.steer,
      ...stressJson(governs, units),
    },
    weight: weight && {
      total: quantityInUnits(weight.mass, "weight", units),
      center: weight.center && pointFromMm(weight.center, units),
      parts: weight.parts.map(({ name, kind, mass, center }) => ({
        name,
        kind,
        weight: quantityInUnits(mass, "weight", units),
        center: pointFromMm(center, units),
      })),
    },
    weights: weights.map(({ name, mass, more, unsprung }) => ({
      variant: name,
      total: weightIn(mass, units),
      more: weightIn(more, units),
      unsprung: weightIn(unsprung, units),
    })),
  };
}

function weightIn(kg: number | null, units: LengthUnit): number | null {
  return kg === null ? null : quantityInUnits(kg, "weight", units);
}

function caseJson(one: LoadsCase, units: LengthUnit) {
  const { on, strength } = one;
  const given = Object.entries(on).flatMap(([name, put]) => (put === null ? [] : [[name, put] as const]));
  return {
    name: one.name,
    side: one.side,
    travel: unitsFromMm(one.travel, units),
    steer: one.steer,
    applied: one.applied.map((put) => forceJson(put, units)),
    on: Object.fromEntries(given.map(([name, put]) => [name, vector(put.force, (n) => force(n, units))])),
    at: Object.fromEntries(given.map(([name, put]) => [name, pointFromMm(put.at, units)])),
    residual: one.residual,
    stresses: strength?.stresses.map((stress) => stressJson(stress, units)) ?? [],
    deflection: strength?.deflection
      ? {
          hubFace: unitsFromMm(strength.deflection.hubFace, units),
          camber: degFromRad(strength.deflection.camber),
        }
      : null,
  };
}

function stressJson(stress: Stress, units: LengthUnit) {
  const { kind, member, at, place, vonMises, nominal, shareOfYield, material } = stress;
  const isAlongPin = kind === "pin" && typeof at === "number";
  return {
    kind,
    member,
    at: isAlongPin ? unitsFromMm(at, units) : at,
    ...(place === null ? {} : { place }),
    vonMises: quantityInUnits(vonMises, "stress", units),
    nominal: quantityInUnits(nominal, "stress", units),
    shareOfYield,
    material,
  };
}

function forceJson({ at, force: size, moment }: ForceAt, units: LengthUnit) {
  const turning = (n: number) => force(n, units) * unitsFromMm(1, units);
  return {
    at: pointFromMm(at, units),
    force: vector(size, (n) => force(n, units)),
    ...(moment ? { moment: vector(moment, turning) } : {}),
  };
}

function force(newtons: number, units: LengthUnit): number {
  return quantityInUnits(newtons, "load", units);
}

function vector([x, y, z]: Vector, turn: (value: number) => number): Vector {
  return [turn(x), turn(y), turn(z)];
}
