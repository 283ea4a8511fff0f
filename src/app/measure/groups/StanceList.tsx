import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { freeName } from "../../state/freeName.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { truckOnBoard, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { measureOf, STANCE_MEASURES, stanceBy } from "./stanceMeasure.ts";

const STANCES: KeyPath = ["stances"];

export type StanceListProps = { truck: Truck };

/** Heights with a name. A new one is the height shown. */
export function StanceList({ truck }: StanceListProps) {
  const stances = useWorkbench((s) => valueAt(shownDocument(s), STANCES));
  const list: readonly unknown[] = Array.isArray(stances) ? stances : [];
  const { insertItem, moveItem, removeItem } = workbench.getState();
  const add = () => {
    const { travel, document } = workbench.getState();
    const names = list.map((stance) => String(valueAt(stance, ["name"])));
    const height = plainLengthText(Math.round(travel * 1e4) / 1e4, fileUnitsOf(document));
    insertItem(STANCES, list.length, { name: freeName("stance", names), travel: height });
  };
  return (
    <section className="part-block">
      <h4>Stances</h4>
      <ul>
        {list.map((stance, i) => {
          const name = String(valueAt(stance, ["name"]) ?? "");
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: names change while they are typed, and two may be the same
            <li key={i} className="stance">
              <FieldRow path={["stances", i, "name"]} label={`Stance ${i + 1}`} />
              <StanceHeight index={i} stance={stance} truck={truck} />
              <div className="row-tools">
                <button
                  type="button"
                  className="small-button"
                  disabled={i === 0}
                  aria-label={`Move ${name} up`}
                  onClick={() => moveItem(STANCES, i, i - 1)}
                >
                  Up
                </button>
                <button
                  type="button"
                  className="small-button"
                  disabled={i === list.length - 1}
                  aria-label={`Move ${name} down`}
                  onClick={() => moveItem(STANCES, i, i + 1)}
                >
                  Down
                </button>
                <button
                  type="button"
                  className="small-button"
                  aria-label={`Remove ${name}`}
                  onClick={() => removeItem(STANCES, i)}
                >
                  Remove
                </button>
              </div>
            </li>
          );
        })}
      </ul>
      <button type="button" className="small-button" onClick={add}>
        Add the height shown
      </button>
    </section>
  );
}

/** A stance's height, by whichever measure the shop reads it: changing the measure keeps the height. */
function StanceHeight({ index, stance, truck }: { index: number; stance: unknown; truck: Truck }) {
  const measure = measureOf(stance);
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  const name = String(valueAt(stance, ["name"]) ?? "");
  return (
    <>
      <label className="stance-by">
        Height by{" "}
        <select
          aria-label={`Height of ${name} by`}
          value={measure}
          onChange={(event) => {
            const wanted = event.target.value as StanceMeasure;
            workbench
              .getState()
              .editField(["stances", index], stanceBy(wanted, stance, truckOnBoard(truck), units));
          }}
        >
          {STANCE_MEASURES.map((one) => (
            <option key={one.measure} value={one.measure}>
              {one.label}
            </option>
          ))}
        </select>
      </label>
      <FieldRow
        path={["stances", index, measure]}
        label={measure === "travel" ? "Height (travel)" : "Height"}
      />
    </>
  );
}
