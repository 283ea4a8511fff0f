import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { evenly } from "../numeric/evenly.ts";
import { type AirEquilibrium, airEquilibrium } from "./airEquilibrium.ts";
import { type AirState, airStateAt, within } from "./airState.ts";

/** Both sides' springs at a named height; null = the wheel cannot stand there. */
export interface AirStance {
  readonly name: string;
  readonly travel: number;
  readonly left: AirState | null;
  readonly right: AirState | null;
}

export interface AirReport {
  readonly stances: readonly AirStance[];
  /** Left side over the travel both wheels can follow, full droop to full bump. */
  readonly byTravel: readonly AirState[];
  /** Where each side stands at the pressure asked for; empty when none was, or weights or curve are missing. */
  readonly atPressure: readonly AirEquilibrium[];
  /** A height or the pressure it takes is outside its limits at a stance, or the pressure asked for is. */
  readonly passed: boolean;
}

const ROWS = 15;

/** Everything about the air springs; null when the setup has none. @param pressure gauge, MPa, to stand at */
export function airOf(model: Model, pressure: number | null = null, rows = ROWS): AirReport | null {
  if (model.setup.airSpring === null) return null;
  const named = model.setup.stances.length > 0 ? model.setup.stances : [{ name: "as measured", travel: 0 }];
  const stances = named.map(({ name, travel }) => ({
    name,
    travel,
    left: airStateAt(model, "left", travel),
    right: airStateAt(model, "right", travel),
  }));
  const { low, high } = limitTravel(model);
  const byTravel = Array.from(evenly(low, high, rows)).flatMap(
    (travel) => airStateAt(model, "left", travel) ?? [],
  );
  const atPressure =
    pressure === null
      ? []
      : (["left", "right"] as const).flatMap((side) => airEquilibrium(model, side, pressure) ?? []);
  const { leastPressure, greatestPressure } = model.setup.airSpring;
  const asked = pressure === null ? "within" : within(pressure, leastPressure, greatestPressure);
  const passed = asked !== "within" || stances.some(({ left, right }) => [left, right].some(isPassed));
  return { stances, byTravel, atPressure, passed };
}

function isPassed(state: AirState | null): boolean {
  if (state === null) return false;
  return state.heightWithin !== "within" || (state.pressureWithin ?? "within") !== "within";
}
