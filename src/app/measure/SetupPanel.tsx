import "./editing.css";
import "./editingPoints.css";
import "./editingNarrow.css";
import type { ReactNode } from "react";
import { fieldAt } from "../../setup/fieldCatalogue.ts";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import { truckName } from "../../studies/wording/truckName.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { BodyParts } from "./body/BodyParts.tsx";
import { FieldGroup } from "./FieldGroup.tsx";
import { FindField } from "./FindField.tsx";
import { FieldRow } from "./fields/FieldRow.tsx";
import { AnyField, AnyFields, keysOf } from "./groups/AnyFields.tsx";
import { ArmFields } from "./groups/ArmFields.tsx";
import { FieldRows } from "./groups/FieldRows.tsx";
import { HardwareFields } from "./groups/HardwareFields.tsx";
import { KnuckleInAxes } from "./groups/KnuckleInAxes.tsx";
import { NewSteering } from "./groups/NewSteering.tsx";
import { StanceList } from "./groups/StanceList.tsx";
import { SteeringFields } from "./groups/SteeringFields.tsx";
import { TireFields } from "./groups/TireFields.tsx";
import { WheelFields } from "./groups/WheelFields.tsx";
import { PointFields } from "./points/PointFields.tsx";
import { KnuckleNote, SpanNote } from "./SpanNote.tsx";
import { StartButton } from "./worksheet/StartButton.tsx";
import { WorksheetSwitch } from "./worksheet/WorksheetSwitch.tsx";

export type SetupPanelProps = {
  /** null = it is not whole yet: what hangs on a whole truck comes later. */
  truck: Truck | null;
  /** The setup has readings: there is a way to their worksheet. */
  hasWorksheet: boolean;
  /** Ways to what else stands on the page. Default none. */
  jumps?: ReactNode;
};

/** Where the fields of each group lie. */
const IN = {
  knuckle: [["knuckle"]],
  wheel: [["wheel"]],
  tire: [["tire"]],
  heights: [["alignment"], ["travel"], ["stances"], ["allowance"]],
  arms: [
    ["truck", "upperArm"],
    ["truck", "lowerArm"],
    ["truck", "wheelbase"],
  ],
  steering: [["truck", "steering"]],
  hardware: [["hardware"]],
  body: [["truck", "body"]],
  file: [["name"], ["units"]],
} as const satisfies Record<string, readonly KeyPath[]>;

const KNUCKLE = ["hubFace", "pinHeight", "pinAngle", "span", "pinLead"] as const;

/** Top keys that are no part of this form: what the file is, and variants, which have a panel of their own. */
const ELSEWHERE: readonly string[] = ["$schema", "format", "version", "variants", "fromExample", "readings"];

/** Blocks that no form is drawn up for: each is a group of its own. */
const OTHERS: readonly string[] = keysOf([], null).filter(
  (key) =>
    !ELSEWHERE.includes(key) &&
    key !== "truck" &&
    !Object.values(IN)
      .flat()
      .some(([first]) => first === key),
);

/** Everything that the setup holds, to be changed: the knuckle first, since it is what is being designed. */
export function SetupPanel({ truck, hasWorksheet, jumps }: SetupPanelProps) {
  const variant = useWorkbench((s) => s.variant);
  return (
    <section data-board-undo="" className="setup" aria-labelledby="setup-title">
      <header className="setup-head">
        <h2 id="setup-title" className="label">
          Setup
        </h2>
        {hasWorksheet && <WorksheetSwitch />}
        {truck && <StartButton truck={truck} isChanged />}
        {jumps}
        <FindField />
        <p className="setup-scope">
          {variant === null
            ? `Changes go to the ${truckName(null)}.`
            : `Changes go to the variant “${variant}”.`}
        </p>
        <p className="setup-scope">
          Type 5 5/8, 142.9 mm or 5 5/8 + 1/8; arrow keys step it; drag a name to the side to change its
          value.
        </p>
      </header>
      <FieldGroup title="Knuckle" of={IN.knuckle} isFirst>
        <KnuckleNote />
        <FieldRows of={["knuckle"]} keys={KNUCKLE} />
        {truck && <SpanNote truck={truck} />}
        <PointFields
          caption="Outer tie rod end, in the knuckle's own axes"
          rowHead=""
          rows={[{ label: "outer tie rod end", path: ["knuckle", "steeringArm"] }]}
        />
        <AnyFields path={["knuckle"]} except={[...KNUCKLE, "steeringArm"]} />
        {truck && <KnuckleInAxes truck={truck} />}
      </FieldGroup>
      <FieldGroup title="Wheel" of={IN.wheel}>
        {truck ? (
          <WheelFields truck={truck} />
        ) : (
          <FieldRows of={["wheel"]} keys={["rimDiameter", "rimWidth", "backspacing"]} />
        )}
      </FieldGroup>
      <FieldGroup title="Tire" of={IN.tire}>
        {truck ? <TireFields truck={truck} /> : <FieldRows of={["tire"]} keys={["size", "loadedRadius"]} />}
      </FieldGroup>
      <FieldGroup title="Alignment, travel and stances" of={IN.heights}>
        <FieldRow path={["alignment", "toe"]} />
        <FieldRows of={["travel"]} keys={["bump", "droop"]} />
        <FieldRow path={["allowance"]} />
        <AnyFields path={["travel"]} except={["bump", "droop"]} />
        <AnyFields path={["alignment"]} except={["toe"]} />
        {truck && <StanceList truck={truck} />}
      </FieldGroup>
      <FieldGroup title="Arms and ball joints" of={IN.arms}>
        <ArmFields />
        {truck && <SpanNote truck={truck} />}
        <AnyFields path={["truck"]} except={["upperArm", "lowerArm", "wheelbase", "steering", "body"]} />
      </FieldGroup>
      <FieldGroup title="Steering" of={IN.steering}>
        {truck ? <SteeringFields truck={truck} /> : <NewSteering />}
      </FieldGroup>
      {truck && (
        <>
          <FieldGroup title="Moving parts" of={IN.hardware}>
            <HardwareFields truck={truck} />
          </FieldGroup>
          <FieldGroup title="Body parts" of={IN.body}>
            <BodyParts truck={truck} />
          </FieldGroup>
        </>
      )}
      {(truck ? OTHERS : []).map((key) => (
        <FieldGroup key={key} title={fieldAt([key], null)?.label ?? key} of={[[key]]}>
          <AnyField path={[key]} />
        </FieldGroup>
      ))}
      <FieldGroup title="Name and units" of={IN.file}>
        <FieldRows of={[]} keys={["name", "units"]} />
        <p className="part-note">
          Bare numbers of the file are read in its units: another unit makes the same numbers mean other
          lengths. To see inches or millimeters, choose them under “Units, look” on top instead.
        </p>
      </FieldGroup>
    </section>
  );
}
