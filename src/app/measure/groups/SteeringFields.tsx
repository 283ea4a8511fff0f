import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import type { PitmanSetup, SteeringSetup } from "../../../setup/types/truckTypes.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { truckOnBoard, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { OptionalBlock } from "../fields/OptionalBlock.tsx";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { AnyFields } from "./AnyFields.tsx";
import { steeringOfType } from "./ways.ts";

export type SteeringFieldsProps = { truck: Truck };

const STEERING: KeyPath = ["truck", "steering"];
const WAYS = [
  { way: "rack", label: "rack" },
  { way: "pitman", label: "pitman arm and idler" },
] as const;
const DRAWN_UP = ["type", "innerEnd", "innerEndRight", "stroke", "swing", "pitman", "idler"];
const ARMS = ["pitman", "idler"] as const;

/** The steering linkage; its other type starts from this one. */
export function SteeringFields({ truck }: SteeringFieldsProps) {
  const type = useWorkbench((s): SteeringSetup["type"] | null => {
    const word = valueAt(shownDocument(s), [...STEERING, "type"]);
    return word === "rack" || word === "pitman" ? word : null;
  });
  const give = (wanted: SteeringSetup["type"]) => {
    const state = workbench.getState();
    const units = fileUnitsOf(state.document);
    state.editField(STEERING, steeringOfType(wanted, truckOnBoard(truck).setup.truck.steering, units));
  };
  return (
    <>
      <WaySwitch label="Steering linkage" ways={WAYS} way={type} onChange={give} />
      {type === "rack" && (
        <>
          <PointFields
            caption="Rack"
            rows={[{ label: "inner tie rod end", path: [...STEERING, "innerEnd"] }]}
          />
          <FieldRow path={[...STEERING, "stroke"]} />
        </>
      )}
      {type === "pitman" && <PitmanFields truck={truck} />}
      <AnyFields path={STEERING} except={DRAWN_UP} />
    </>
  );
}

function PitmanFields({ truck }: SteeringFieldsProps) {
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  const right = (): readonly (string | number)[] => {
    const { steering } = truckOnBoard(truck).setup.truck;
    const held: PitmanSetup["innerEndRight"] =
      steering.type === "pitman" ? steering.innerEndRight : [0, 0, 0];
    return held.map((mm) => plainLengthText(mm, units));
  };
  return (
    <>
      <PointFields
        caption="Pitman-arm steering"
        rows={[
          { label: "inner tie rod end", path: [...STEERING, "innerEnd"] },
          ...ARMS.flatMap((arm) => [
            { label: `${arm} shaft`, path: [...STEERING, arm, "pivot"] },
            { label: `${arm} arm end`, path: [...STEERING, arm, "end"] },
          ]),
        ]}
      />
      <FieldRow path={[...STEERING, "swing"]} />
      <OptionalBlock
        path={[...STEERING, "innerEndRight"]}
        title="Right inner tie rod end"
        note="Without it: the mirror image of the left one."
        start={right}
      >
        <PointFields
          caption="Right inner tie rod end"
          rows={[{ label: "right inner end", path: [...STEERING, "innerEndRight"] }]}
        />
      </OptionalBlock>
      {ARMS.map((arm) => (
        <OptionalBlock
          key={arm}
          path={[...STEERING, arm, "axis"]}
          title={arm === "pitman" ? "Pitman shaft direction" : "Idler shaft direction"}
          note="Without it: straight up."
          start={() => [0, 0, 1]}
        >
          <PointFields
            caption={`Direction of the ${arm} shaft`}
            rowHead=""
            rows={[{ label: "direction", path: [...STEERING, arm, "axis"] }]}
          />
        </OptionalBlock>
      ))}
    </>
  );
}
