import { bareTyped, withSameWithin } from "../../../setup/reading/typedPair.ts";
import { type KeyPath, keyText, valueAt } from "../../../setup/types/keyPath.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { type LengthStep, stepLength } from "../../../units/stepLength.ts";
import { steppedText } from "../../measure/body/archGeometry.ts";
import { lengthStep, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import type { StagePoint } from "./stagePoints.ts";

/** By how much a coordinate moves: `axis` 0 = x, 1 = y, 2 = z, as the file has it. */
export interface Shift {
  readonly axis: number;
  readonly mm: number;
}

/**
 * Puts a point where it is carried, each coordinate to a whole step; one that has moved by less than half a step stays as
 * typed. @param point as it was when it was taken
 */
export function carryStagePoint(point: StagePoint, shifts: readonly Shift[]): void {
  const state = workbench.getState();
  const step = lengthStep(state);
  const units = fileUnitsOf(shownDocument(state));
  write(
    point,
    shifts.map(({ axis, mm }) => {
      const from = point.at[axis]!;
      if (Math.abs(mm) < 0.5 * stepMm(step)) return { axis, value: point.typed[axis] };
      const [low, high] = point.open[axis]!;
      const to = Math.min(high - stepMm(step), Math.max(low + stepMm(step), from + mm));
      return { axis, value: steppedText(to, step, units) };
    }),
  );
}

/** Moves a coordinate by whole steps, as the arrow keys do in a field. @param steps + = toward greater values */
export function nudgeStagePoint(point: StagePoint, axis: number, steps: number): void {
  const state = workbench.getState();
  const units = fileUnitsOf(shownDocument(state));
  const held = bareTyped(valueAt(shownDocument(state), [...point.homes[axis]!, axis]));
  if (typeof held !== "number" && typeof held !== "string") return;
  const text = stepLength(held, steps < 0 ? -1 : 1, lengthStep(state), units, Math.abs(steps));
  const to = text === null ? null : parseLength(text, units);
  const [low, high] = point.open[axis]!;
  if (text !== null && to?.ok && to.mm > low && to.mm < high) write(point, [{ axis, value: text }]);
}

/** Writes coordinates where each is held. */
function write(
  point: StagePoint,
  coordinates: readonly { readonly axis: number; readonly value: unknown }[],
): void {
  const state = workbench.getState();
  const homes = new Map<string, { readonly path: KeyPath; readonly values: unknown[] }>();
  for (const { axis, value } of coordinates) {
    const path = point.homes[axis]!;
    const held = valueAt(shownDocument(state), path);
    if (!Array.isArray(held)) return;
    const home = homes.get(keyText(path)) ?? { path, values: [...held] };
    home.values[axis] = withSameWithin(held[axis], value, fileUnitsOf(shownDocument(state)));
    homes.set(keyText(path), home);
  }
  for (const { path, values } of homes.values()) state.editField(path, values);
}

function stepMm({ units, size }: LengthStep): number {
  return units === "in" ? size * MM_PER_INCH : size;
}
