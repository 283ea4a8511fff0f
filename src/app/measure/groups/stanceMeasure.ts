import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { measureAt } from "../../../studies/stances/stanceMeasures.ts";
import { degFromRad } from "../../../units/angle.ts";
import { type FileUnits, mmFromInches } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { Truck } from "../../state/truck.ts";

/** Ways to give a stance's height, as a shop reads it. */
export const STANCE_MEASURES: readonly { readonly measure: StanceMeasure; readonly label: string }[] = [
  { measure: "travel", label: "wheel travel" },
  { measure: "lowerArmAngle", label: "lower arm angle" },
  { measure: "airSpringHeight", label: "air spring height" },
  { measure: "lipHeight", label: "floor to fender lip" },
  { measure: "frameHeight", label: "floor to frame" },
];

/** mm. Stands where the setup does not have what a height is measured at yet: something to be typed over. */
const UNKNOWN = mmFromInches(10);

/** By which measure a stance's height is given, as typed; travel where none is. */
export function measureOf(stance: unknown): StanceMeasure {
  const given = STANCE_MEASURES.find(({ measure }) => valueAt(stance, [measure]) !== undefined);
  return given?.measure ?? "travel";
}

/** The same stance with its height given by another measure. @param truck the one it was last placed on */
export function stanceBy(measure: StanceMeasure, stance: unknown, truck: Truck, units: FileUnits): object {
  const others = Object.entries((stance ?? {}) as Readonly<Record<string, unknown>>).filter(([key]) =>
    STANCE_MEASURES.every((one) => one.measure !== key),
  );
  const name = valueAt(stance, ["name"]);
  const travel = truck.model.setup.stances.find((one) => one.name === name)?.travel ?? 0;
  const read = measureAt(truck.model, measure, travel);
  const value =
    measure === "lowerArmAngle"
      ? Number(degFromRad(read ?? 0).toFixed(3))
      : plainLengthText(Math.round((read ?? UNKNOWN) * 1e4) / 1e4, units);
  return { ...Object.fromEntries(others), [measure]: value };
}
