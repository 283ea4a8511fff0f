import { useId } from "react";
import { truckName } from "../../studies/wording/truckName.ts";
import { setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";

export type GhostFieldProps = {
  /** The truck shown: it is not its own ghost. */
  truck: Truck;
};

const NONE = "none";
const BELOW = "below";

/** Picks which other variant is outlined over the truck. Draws nothing where there are no variants. */
export function GhostField({ truck }: GhostFieldProps) {
  const id = useId();
  const ghost = useStage((s) => s.ghost);
  const isWiped = useStage((s) => s.wipe !== null);
  const { variant, variantNames } = truck.setup;
  if (variantNames.length === 0) return null;
  // Values are positions: a variant may have any name.
  const value =
    ghost === null ? NONE : ghost.variant === null ? BELOW : String(variantNames.indexOf(ghost.variant));
  return (
    <>
      <label htmlFor={id}>Ghost</label>
      <select
        id={id}
        value={value}
        onChange={({ target }) => {
          const name = variantNames[Number(target.value)] ?? null;
          setStage(target.value === NONE ? { ghost: null, wipe: null } : { ghost: { variant: name } });
        }}
      >
        <option value={NONE}>none</option>
        <option value={BELOW} disabled={variant === null}>
          {truckName(null)}
        </option>
        {variantNames.map((name, i) => (
          <option key={name} value={i} disabled={name === variant}>
            {name}
          </option>
        ))}
      </select>
      {ghost && (
        <label className="show-check">
          <input
            type="checkbox"
            checked={isWiped}
            onChange={({ target }) => setStage({ wipe: target.checked ? 0.5 : null })}
          />
          Wipe between the two
        </label>
      )}
    </>
  );
}
