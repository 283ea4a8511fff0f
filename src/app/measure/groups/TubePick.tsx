import { useId } from "react";
import { isOfTube, withTube } from "../../../setup/catalogs/tube.ts";
import { DEFAULT_MATERIAL } from "../../../setup/types/defaults.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { useCatalogs } from "../../parts/catalogs/shippedCatalogs.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";

/** A tube out of the catalog for a member of the build: choosing one writes its diameter, wall and material. */
export function TubePick({ path }: { path: KeyPath }) {
  const id = useId();
  const { tubes } = useCatalogs();
  const document = useWorkbench(shownDocument);
  const member = valueAt(document, path);
  const units = fileUnitsOf(document);
  if (valueAt(member, ["kind"]) !== "tube" || tubes.length === 0) return null;
  const made = {
    material: valueAt(document, ["build", "material"]) ?? DEFAULT_MATERIAL,
    ...(member as object),
  };
  const chosen = tubes.find(({ part }) => isOfTube(made, part, units))?.name ?? "";
  const choose = (name: string) => {
    const tube = tubes.find((one) => one.name === name);
    if (tube === undefined) return;
    const value = withTube(member, tube.part, units);
    workbench.getState().applySuggestion({ path, value, kind: "nearest" });
  };
  return (
    <div className="field">
      <div className="field-line">
        <label htmlFor={id} className="field-label">
          Tube from the catalog
        </label>
        <select
          id={id}
          className="field-choice"
          value={chosen}
          onChange={({ target: { value } }) => choose(value)}
        >
          {chosen === "" && <option value="">as typed</option>}
          {tubes.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}
