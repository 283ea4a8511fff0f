import type { KeyPath } from "../../../setup/types/keyPath.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { truckOnBoard, useWorkbench } from "../../state/useWorkbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { OptionalBlock } from "../fields/OptionalBlock.tsx";
import { PointFields } from "../points/PointFields.tsx";
import { AnyFields } from "./AnyFields.tsx";
import { FieldRows } from "./FieldRows.tsx";
import { startCaliper } from "./ways.ts";

export type HardwareFieldsProps = { truck: Truck };

const HARDWARE: KeyPath = ["hardware"];
const ROUND = [
  "upperArm",
  "lowerArm",
  "upperBallJoint",
  "lowerBallJoint",
  "steeringArm",
  "tieRod",
  "tieRodEnd",
  "knuckle",
] as const;

/** What moves with the front end and is measured, if the setup says so: round things by their radius, rotor and caliper. */
export function HardwareFields({ truck }: HardwareFieldsProps) {
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  return (
    <OptionalBlock
      path={HARDWARE}
      title="Moving parts"
      note="Arms, rods, joints and brake measured against the wheel. Without them only body parts are."
      add="Measure"
      start={() => ({})}
    >
      {ROUND.map((key) => (
        <FieldRow key={key} path={[...HARDWARE, key, "radius"]} />
      ))}
      <OptionalBlock
        path={[...HARDWARE, "rotor"]}
        title="Brake rotor"
        note="A solid disk square to the pin. Measured only when it is here."
        start={() => ({})}
      >
        <FieldRows of={[...HARDWARE, "rotor"]} keys={["diameter", "thickness", "inboard"]} />
      </OptionalBlock>
      <OptionalBlock
        path={[...HARDWARE, "caliper"]}
        title="Brake caliper"
        note="A solid box round the caliper and its bracket. Measured only when it is here."
        start={() => startCaliper(truckOnBoard(truck).setup, units)}
      >
        <FieldRow path={[...HARDWARE, "caliper", "frame"]} />
        <PointFields
          caption="Corners of the caliper"
          rowHead="corner"
          rows={[
            { label: "lowest", path: [...HARDWARE, "caliper", "min"] },
            { label: "highest", path: [...HARDWARE, "caliper", "max"] },
          ]}
        />
      </OptionalBlock>
      <AnyFields path={HARDWARE} except={[...ROUND, "rotor", "caliper"]} />
    </OptionalBlock>
  );
}
