import type { AsBuiltSide } from "../../../studies/jig/asBuiltReport.ts";
import type { BuiltKnuckle } from "../../../studies/jig/jigReadings.ts";
import { degFromRad } from "../../../units/angle.ts";
import { type FileUnits, unitsFromMm } from "../../../units/lengthUnits.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";

/** Makes a variant of a knuckle as built: all that is answered for a truck is then answered for that one. */
export function KeepBuilt({ side }: { side: AsBuiltSide }) {
  return (
    <button type="button" className="button as-built-keep" onClick={() => keep(side)}>
      Make the {side.side} knuckle as built a variant
    </button>
  );
}

/** Makes a variant of each of both, in one step to undo; the truck shown stays the one their readings are of. */
export function KeepBoth({ sides }: { sides: readonly AsBuiltSide[] }) {
  if (sides.length < 2) return null;
  const keepBoth = () => {
    const { variant, beginGesture, endGesture, chooseVariant } = workbench.getState();
    beginGesture();
    for (const side of sides) {
      keep(side);
      chooseVariant(variant);
    }
    endGesture();
  };
  return (
    <button type="button" className="button as-built-keep" onClick={keepBoth}>
      Make both knuckles as built variants
    </button>
  );
}

function keep(side: AsBuiltSide): void {
  const { duplicateAsVariant, document } = workbench.getState();
  const knuckle = builtKnuckleValue(side.fit.knuckle, fileUnitsOf(document));
  duplicateAsVariant(`as built, ${side.side}`, [
    ...Object.entries(knuckle).map(([key, value]) => ({ path: ["knuckle", key], value })),
    // The readings are of the knuckle as ordered: beside the one as built they would be told off twice.
    { path: ["asBuilt"], value: undefined },
    { path: ["jig", "toe"], value: undefined },
  ]);
}

/** Digits kept behind the point: a hundredth of what any reading is good to. */
const DIGITS = { in: 4, mm: 3, deg: 3 } as const;

/** A knuckle as built as the file's `knuckle` block holds it; toe stands in where its steering arm is. */
export function builtKnuckleValue(
  { span, pinHeight, pinAngle, pinLead, hubFace, steeringArm }: BuiltKnuckle,
  units: FileUnits,
) {
  const length = (mm: number) => Number(unitsFromMm(mm, units).toFixed(DIGITS[units])) + 0;
  return {
    span: length(span),
    pinHeight: length(pinHeight),
    pinAngle: Number(degFromRad(pinAngle).toFixed(DIGITS.deg)) + 0,
    pinLead: length(pinLead),
    hubFace: length(hubFace),
    steeringArm: steeringArm.map(length),
  };
}
