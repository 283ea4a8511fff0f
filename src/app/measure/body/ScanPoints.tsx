import { useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { PICK_TEXTS, POINTS_OFF_SCAN } from "../../../studies/wording/gaugeWords.ts";
import { askForPress } from "../../state/scanPick.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { pointInUnits, type ScanOnBoard } from "./scanOnBoard.ts";
import { heldPlaces } from "./truckPlaces.ts";

export type ScanPointsProps = {
  /** Of the body part. */
  path: KeyPath;
  truck: Truck;
  scan: ScanOnBoard;
};

/** Takes points of the truck off a scan that stands in its place: one is chosen by name and pressed on the scan. */
export function ScanPoints({ path, truck, scan }: ScanPointsProps) {
  const [chosen, setChosen] = useState(0);
  const places = heldPlaces(truck).filter(
    ({ path: held }) => held.slice(0, path.length).join() !== path.join(),
  );
  const place = places[chosen] ?? places[0];
  if (!place) return null;
  const take = () =>
    askForPress({
      on: "scan",
      part: scan.index,
      words: PICK_TEXTS.scan(place.name),
      marks: [],
      take: ({ at: [x, y, z] }) => {
        const state = workbench.getState();
        // Points are given for the left side; those of parts stand where they were typed.
        const out = place.at[1] < 0 === y < 0 ? y : -y;
        state.editField(place.path, pointInUnits([x, out, z], fileUnitsOf(shownDocument(state))));
      },
    });
  return (
    <details className="scan-points">
      <summary>{POINTS_OFF_SCAN.title}</summary>
      <p className="part-note">{POINTS_OFF_SCAN.how}</p>
      <div className="row-tools">
        <select
          className="field-choice"
          aria-label="Point of the truck"
          value={chosen}
          onChange={({ target }) => setChosen(Number(target.value))}
        >
          {places.map(({ name }, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
        </select>
        <button type="button" className="small-button" onClick={take}>
          Pick it on the scan
        </button>
      </div>
    </details>
  );
}
