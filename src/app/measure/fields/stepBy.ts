import { isSameJson } from "../../../setup/editing/writtenValues.ts";
import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import { bareTyped, withSameWithin } from "../../../setup/reading/typedPair.ts";
import { withoutWithin } from "../../../setup/takeWithin.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { degFromRad } from "../../../units/angle.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { stepLength, stepTo } from "../../../units/stepLength.ts";
import { fieldValue, lengthStep, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";

/**
 * What holds while a field is left out, as the file would write it: a number of degrees or of nothing, or a length as text
 * with its unit where it is not the file's. null = nothing does, or nobody can say.
 */
export function heldValue(truck: Truck | null, path: KeyPath, fileUnits: FileUnits): string | number | null {
  if (!truck) return null;
  const held = heldNumber(truck, path);
  if (held === null) return null;
  switch (fieldAt(path, truck.bolted.setup)?.kind) {
    case "angle":
      return Number(degFromRad(held).toFixed(6));
    case "length":
    case "signedLength":
      // A default that follows from others is no round number: told to a tenth of a micrometer.
      return plainLengthText(Math.round(held * 1e4) / 1e4, fileUnits);
    case "number":
      return Number(held.toFixed(6));
    default:
      return null;
  }
}

function heldNumber(truck: Truck, path: KeyPath): number | null {
  if (path[0] === "tire" && path[1] === "loadedRadius") return truck.model.tire.loadedRadius;
  const value = valueAt(truck.setup, path);
  return typeof value === "number" ? value : null;
}

/**
 * The value so many steps away from another, as `editField` takes it; null when it does not step. A length goes by the
 * fraction shown, from between two to a whole one; other numbers by the field's own step. How well it is known stays.
 */
function stepped(path: KeyPath, start: unknown, steps: number): unknown {
  const state = workbench.getState();
  const document = shownDocument(state);
  const field = fieldAt(path, document);
  const from = bareTyped(start);
  if (!field || steps === 0 || (typeof from !== "number" && typeof from !== "string")) return null;
  const way = steps > 0 ? 1 : -1;
  if (field.kind === "length" || field.kind === "signedLength") {
    const units = fileUnitsOf(document);
    const step = lengthStep(state);
    const text = stepLength(from, way, step, units, Math.abs(steps));
    // Text with its unit says the same whatever bare text means.
    if (text === null) return null;
    return withSameWithin(start, /[a-z]$/.test(text) ? text : `${text} ${units}`, units);
  }
  const value = Number(from);
  if (field.step === null || !Number.isFinite(value)) return null;
  const to = Number(stepTo(value, field.step, way, Math.abs(steps)).toFixed(9));
  return withSameWithin(start, to, field.kind === "angle" ? "°" : "");
}

/** What steps start from: the value that stands there, or the one that holds while none does. */
export function stepStart(path: KeyPath): unknown {
  const state = workbench.getState();
  return fieldValue(state, path) ?? heldValue(state.truck, path, fileUnitsOf(state.document));
}

/** Moves a field by steps, + = up. What the field cannot hold stays a draft with its mend. */
export function stepBy(path: KeyPath, steps: number): void {
  const value = stepped(path, stepStart(path), steps);
  if (value !== null) workbench.getState().editField(path, value);
}

/** Puts a field so many steps from where it started, if it can hold that. */
export function stepFrom(path: KeyPath, start: unknown, steps: number): void {
  const state = workbench.getState();
  const value = steps === 0 ? start : stepped(path, start, steps);
  if (value === null || value === undefined) return;
  const document = shownDocument(state);
  const field = fieldAt(path, document);
  if (!field || isSameJson(valueAt(document, path), value)) return;
  if (field.schema.safeParse(withoutWithin(field.schema, value)).success) state.editField(path, value);
}
