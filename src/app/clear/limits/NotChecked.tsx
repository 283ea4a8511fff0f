import { memo, useState } from "react";
import { notChecked } from "../../../studies/limits/limitsOn.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { limitToAdd } from "./addLimit.ts";

export type NotCheckedProps = {
  truck: Truck;
};

/** What no limit is given for, so that nothing is said about it; each with a way to give one. */
export const NotChecked = memo(function NotChecked({ truck }: NotCheckedProps) {
  const editField = useWorkbench((s) => s.editField);
  const [added, setAdded] = useState<string | null>(null);
  const names = notChecked(truck.setup);
  if (names.length === 0 && added === null) return null;
  return (
    <>
      {names.length > 0 && <h3>Not checked: the setup gives no limit</h3>}
      <ul className="limit-missing">
        {names.map((name) => {
          const toAdd = limitToAdd(name, truck.setup);
          return (
            <li key={name}>
              <span>{name}</span>
              {toAdd === null ? (
                <span className="fold-fine">give it in the setup</span>
              ) : (
                <button
                  type="button"
                  className="limit-add"
                  aria-label={`Check it: ${name}`}
                  onClick={() => {
                    editField(toAdd.path, toAdd.value);
                    setAdded(name);
                  }}
                >
                  Check it
                </button>
              )}
            </li>
          );
        })}
      </ul>
      <p className="fold-fine" role="status">
        {added &&
          `The limit of the ${added} now has a number to begin with. Type its maker’s own in the setup, under limits.`}
      </p>
    </>
  );
});
