import { useId } from "react";
import { truckName } from "../../../studies/wording/truckName.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** Picks one of the setup's variants, or the setup itself. Draws nothing when there are none. */
export function VariantPicker() {
  const id = useId();
  const variant = useWorkbench((s) => s.variant);
  const chooseVariant = useWorkbench((s) => s.chooseVariant);
  // As they are now, also while the rest of the page is a step behind: what is shown must be among them.
  const names: readonly string[] = JSON.parse(
    useWorkbench((s) => JSON.stringify(s.truck?.setup.variantNames ?? [])),
  );
  if (names.length === 0) return null;
  return (
    <div className="variant-picker">
      <label htmlFor={id}>Variant</label>
      <div className="variant-chosen">
        {/* A choice writes its name on one line only: over it stands the whole of it, in as many as it takes. */}
        <span aria-hidden="true">{truckName(variant)}</span>
        {/* Values are positions: a variant may have any name, also an empty-looking one. */}
        <select
          id={id}
          value={variant === null ? -1 : names.indexOf(variant)}
          onChange={(event) => chooseVariant(names[Number(event.target.value)] ?? null)}
        >
          <option value={-1}>{truckName(null)}</option>
          {names.map((name, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
