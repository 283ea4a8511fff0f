import { useId, useState } from "react";
import { fieldAt } from "../../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldHelp } from "../fields/FieldHelp.tsx";
import { CoordinateTable, type TableRow } from "./CoordinateTable.tsx";

export type PointFieldsProps = {
  caption: string;
  /** Points that are there, with their names. */
  rows: readonly TableRow[];
  /** Default x, y, z. */
  columns?: readonly string[];
  /** Default "point". */
  rowHead?: string;
};

const XYZ = ["x", "y", "z"] as const;

/** Named points in one table, with what each means on demand. */
export function PointFields({ caption, rows, columns = XYZ, rowHead = "point" }: PointFieldsProps) {
  const id = useId();
  const [isOpen, setIsOpen] = useState(false);
  const document = shownDocument(workbench.getState());
  return (
    <div className="point-fields">
      <CoordinateTable caption={caption} rowHead={rowHead} columns={columns} rows={rows}>
        <button
          type="button"
          className="small-button"
          aria-expanded={isOpen}
          aria-controls={`${id}-help`}
          onClick={() => setIsOpen(!isOpen)}
        >
          ? {rows.length === 1 ? "What is this point?" : "What are these points?"}
        </button>
      </CoordinateTable>
      <div id={`${id}-help`} hidden={!isOpen}>
        {isOpen &&
          rows.map(({ path, label }) => {
            const field = fieldAt(path, document);
            return (
              field && (
                <div key={path.join(".")}>
                  <p className="field-help-name">{label}</p>
                  <FieldHelp path={path as KeyPath} field={field} isOfVariant={false} />
                </div>
              )
            );
          })}
      </div>
    </div>
  );
}
