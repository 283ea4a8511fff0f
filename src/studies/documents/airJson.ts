import type { LengthUnit } from "../../setup/types/types.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { bareUnit, quantityInUnits } from "../../units/quantity.ts";
import type { AirEquilibrium } from "../air/airEquilibrium.ts";
import type { AirReport } from "../air/airOf.ts";
import type { AirState } from "../air/airState.ts";

/** The air springs as `air --json` prints them, in the file's units; rates are load units per length unit. */
export function airJson(report: AirReport, units: LengthUnit) {
  return {
    units,
    pressureUnit: bareUnit("pressure", units),
    loadUnit: bareUnit("load", units),
    volumeUnit: bareUnit("volume", units),
    passed: report.passed,
    stances: report.stances.map(({ name, travel, left, right }) => ({
      name,
      travel: unitsFromMm(travel, units),
      left: left && stateJson(left, units),
      right: right && stateJson(right, units),
    })),
    byTravel: report.byTravel.map((state) => stateJson(state, units)),
    atPressure: report.atPressure.map((found) => equilibriumJson(found, units)),
  };
}

function stateJson(state: AirState, units: LengthUnit) {
  const load = (newtons: number | null) => newtons && quantityInUnits(newtons, "load", units);
  const perLength = (rate: number | null) =>
    rate && quantityInUnits(rate, "load", units) / unitsFromMm(1, units);
  return {
    travel: unitsFromMm(state.travel, units),
    height: unitsFromMm(state.height, units),
    heightWithin: state.heightWithin,
    motionRatio: state.motionRatio,
    load: load(state.load),
    pressure: state.pressure === null ? null : quantityInUnits(state.pressure, "pressure", units),
    pressureWithin: state.pressureWithin,
    ...(state.noPressure === null ? {} : { noPressure: state.noPressure }),
    volume: state.volume && quantityInUnits(state.volume, "volume", units),
    volumeIsEstimate: state.volumeIsEstimate,
    springRate: perLength(state.springRate),
    wheelRate: perLength(state.wheelRate),
    frequency: state.frequency,
  };
}

function equilibriumJson({ side, pressure, balances, rest, travel }: AirEquilibrium, units: LengthUnit) {
  return {
    side,
    pressure: quantityInUnits(pressure, "pressure", units),
    rest,
    travel: travel === null ? null : unitsFromMm(travel, units),
    balances: balances.map((balance) => ({
      travel: unitsFromMm(balance.travel, units),
      height: unitsFromMm(balance.height, units),
      stable: balance.stable,
    })),
  };
}
