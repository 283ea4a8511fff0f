import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { OptionalBlock } from "../../measure/fields/OptionalBlock.tsx";
import { startCaliper } from "../../measure/groups/ways.ts";
import { PointFields } from "../../measure/points/PointFields.tsx";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";

/** The caliper of an order: two corners of a box; it begins as one about as large as most, inside the barrel. */
export function CaliperBox({ path }: { path: KeyPath }) {
  const start = () => {
    const { truck, document } = workbench.getState();
    if (!truck) return {};
    const { min, max } = startCaliper(truck.bolted.setup, fileUnitsOf(document)) as Readonly<
      Record<string, unknown>
    >;
    return { min, max };
  };
  return (
    <OptionalBlock
      path={path}
      title="Caliper, from the rotor’s seat"
      note="A box round caliper and bracket: x forward, y outboard along the pin, z up across it, from the middle of the rotor’s seat."
      start={start}
    >
      <PointFields
        caption="Corners of the caliper"
        rowHead="corner"
        rows={[
          { label: "lowest", path: [...path, "min"] },
          { label: "highest", path: [...path, "max"] },
        ]}
      />
    </OptionalBlock>
  );
}
