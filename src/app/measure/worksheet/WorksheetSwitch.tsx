import { WaySwitch } from "../fields/WaySwitch.tsx";
import { useWorksheetView, worksheetView } from "./worksheetView.ts";

const WAYS = [
  { way: "worksheet", label: "worksheet" },
  { way: "fields", label: "all fields" },
] as const;

/** What is beside the stage at Measure: readings to be taken, or every field of the setup. */
export function WorksheetSwitch() {
  const isFields = useWorksheetView((s) => s.isFields);
  return (
    <WaySwitch
      label="Measure with the"
      ways={WAYS}
      way={isFields ? "fields" : "worksheet"}
      onChange={(way) => worksheetView.setState({ isFields: way === "fields" })}
    />
  );
}
