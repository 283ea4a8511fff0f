import "./editing.css";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { FieldGroup } from "./FieldGroup.tsx";
import { FieldRow } from "./FieldRow.tsx";

export type SetupPanelProps = {
  truck: Truck;
};

const KNUCKLE = ["hubFace", "pinHeight", "pinAngle", "span", "pinLead"] as const;

/** Everything that the setup holds, to be changed: the knuckle first, since it is what is being designed. */
export function SetupPanel(_props: SetupPanelProps) {
  const variant = useWorkbench((s) => s.variant);
  return (
    <section className="setup" aria-labelledby="setup-title">
      <header className="setup-head">
        <h2 id="setup-title" className="label">
          Setup
        </h2>
        <p className="setup-scope">{variant === null ? "as it stands" : `changes go to “${variant}”`}</p>
      </header>
      <FieldGroup title="Knuckle" of={[["knuckle"]]} isFirst>
        {KNUCKLE.map((key) => (
          <FieldRow key={key} path={["knuckle", key]} />
        ))}
      </FieldGroup>
    </section>
  );
}
