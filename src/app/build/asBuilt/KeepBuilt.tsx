import type { AsBuiltSide } from "../../../studies/jig/asBuiltReport.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { builtKnuckleValue } from "./builtKnuckleValue.ts";

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
