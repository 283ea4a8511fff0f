import { emptySteering } from "../../../setup/newTruck.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { PointFields } from "../points/PointFields.tsx";

const STEERING: KeyPath = ["truck", "steering"];
const WAYS = [
  { way: "rack", label: "rack" },
  { way: "pitman", label: "steering box" },
] as const;

/** The steering linkage of a truck that is just begun: empty, whichever it is. */
export function NewSteering() {
  const type = useWorkbench((s) =>
    valueAt(shownDocument(s), [...STEERING, "type"]) === "pitman" ? "pitman" : "rack",
  );
  const rows =
    type === "rack"
      ? [{ label: "inner tie rod end", path: [...STEERING, "innerEnd"] }]
      : [
          { label: "inner tie rod end", path: [...STEERING, "innerEnd"] },
          { label: "pitman shaft", path: [...STEERING, "pitman", "pivot"] },
          { label: "pitman arm end", path: [...STEERING, "pitman", "end"] },
          { label: "idler shaft", path: [...STEERING, "idler", "pivot"] },
          { label: "idler arm end", path: [...STEERING, "idler", "end"] },
        ];
  return (
    <>
      <WaySwitch
        label="Steering linkage"
        ways={WAYS}
        way={type}
        onChange={(wanted) =>
          workbench
            .getState()
            .applySuggestion({ path: STEERING, value: emptySteering(wanted), kind: "before" })
        }
      />
      <PointFields caption="Steering" rows={rows} />
      <FieldRow path={[...STEERING, type === "rack" ? "stroke" : "swing"]} />
    </>
  );
}
