import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { tireSentence } from "../../../studies/wording/comparedNumbers.ts";
import { LINES } from "../../../studies/wording/worksheetWords.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { truckOnBoard, useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { PointList } from "../points/PointList.tsx";
import { AnyFields } from "./AnyFields.tsx";
import { FieldRows } from "./FieldRows.tsx";
import { type TireWay, tireGivenBy } from "./ways.ts";

export type TireFieldsProps = { truck: Truck };

const WAYS = [
  { way: "size", label: "size" },
  { way: "diameter", label: "dimensions" },
  { way: "profile", label: "profile" },
] as const;
const TIRE: KeyPath = ["tire"];
const DRAWN_UP = ["size", "diameter", "sectionWidth", "treadWidth", "profile", "loadedRadius"];

/** The tire: by the size on its sidewall, by its main dimensions, or by a measured profile. */
export function TireFields({ truck }: TireFieldsProps) {
  const way = useWorkbench((s): TireWay | null => {
    const tire = valueAt(shownDocument(s), TIRE);
    return WAYS.find((one) => valueAt(tire, [one.way]) !== undefined)?.way ?? null;
  });
  const give = (wanted: TireWay) => {
    const state = workbench.getState();
    const { model, setup } = truckOnBoard(truck);
    const units = fileUnitsOf(state.document);
    const typed = valueAt(shownDocument(state), TIRE);
    state.editField(TIRE, tireGivenBy(wanted, typed, model.tire, setup.wheel, units));
  };
  return (
    <>
      <WaySwitch label="Given by" ways={WAYS} way={way} onChange={give} />
      {way === "diameter" && <FieldRows of={TIRE} keys={["diameter", "sectionWidth", "treadWidth"]} />}
      {(way === "size" || way === null) && (
        <>
          <FieldRow path={["tire", "size"]} />
          <p className="part-note">{LINES.tireSize?.how}</p>
        </>
      )}
      <TireNote />
      {way === "profile" && (
        <PointList
          path={["tire", "profile"]}
          caption="Measured tire profile"
          columns={["x", "r"]}
          least={3}
        />
      )}
      <FieldRow path={["tire", "loadedRadius"]} />
      <AnyFields path={TIRE} except={DRAWN_UP} />
    </>
  );
}

/** What a size comes to on this rim, under it. */
function TireNote() {
  const format = useFormat();
  const text = useWorkbench((s) => (s.truck ? tireSentence(s.truck.model, format) : ""));
  return text === "" ? null : <p className="part-note">{text}</p>;
}
