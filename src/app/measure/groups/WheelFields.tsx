import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { truckOnBoard, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { OptionalBlock } from "../fields/OptionalBlock.tsx";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { PointList } from "../points/PointList.tsx";
import { AnyFields } from "./AnyFields.tsx";
import { FieldRows } from "./FieldRows.tsx";
import { flatCenter, type SeatWay, wheelGivenBy } from "./ways.ts";

export type WheelFieldsProps = { truck: Truck };

const WAYS = [
  { way: "backspacing", label: "backspacing" },
  { way: "offset", label: "offset" },
] as const;
const WHEEL: KeyPath = ["wheel"];
const DRAWN_UP = ["rimDiameter", "rimWidth", "backspacing", "offset", "barrelDiameter", "center"];

/** The wheel: where its mounting face lies is given by backspacing or by offset, and each is worked out from the other. */
export function WheelFields({ truck }: WheelFieldsProps) {
  const way = useWorkbench((s): SeatWay | null => {
    const wheel = valueAt(shownDocument(s), WHEEL);
    if (valueAt(wheel, ["offset"]) !== undefined) return "offset";
    return valueAt(wheel, ["backspacing"]) === undefined ? null : "backspacing";
  });
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  const give = (wanted: SeatWay) => {
    const state = workbench.getState();
    state.editField(
      WHEEL,
      wheelGivenBy(wanted, valueAt(shownDocument(state), WHEEL), truckOnBoard(truck).setup.wheel, units),
    );
  };
  return (
    <>
      <FieldRows of={WHEEL} keys={["rimDiameter", "rimWidth"]} />
      <WaySwitch label="Mounting face by" ways={WAYS} way={way} onChange={give} />
      <FieldRow path={["wheel", way ?? "backspacing"]} />
      <FieldRow path={["wheel", "barrelDiameter"]} />
      <OptionalBlock
        path={["wheel", "center"]}
        title="Measured center"
        note="The inside of the wheel's center, which a caliper must clear. Without it: a flat disk at the mounting face."
        start={() => flatCenter(truckOnBoard(truck).setup.wheel, units)}
      >
        <PointList
          path={["wheel", "center"]}
          caption="Measured center of the wheel"
          columns={["x", "r"]}
          least={2}
        />
      </OptionalBlock>
      <AnyFields path={WHEEL} except={DRAWN_UP} />
    </>
  );
}
