import { FieldRow } from "../fields/FieldRow.tsx";
import { PointFields } from "../points/PointFields.tsx";

const POINTS = [
  ["frontPivot", "front pivot"],
  ["rearPivot", "rear pivot"],
  ["ballJoint", "ball joint"],
] as const;

/** Both control arms by their points, and the wheelbase. */
export function ArmFields() {
  return (
    <>
      {(["upperArm", "lowerArm"] as const).map((arm) => (
        <section key={arm} className="part-block">
          <h4>
            {arm === "upperArm" ? "Upper arm, left side" : "Lower arm, left side"}{" "}
            <small>the right one is its mirror image</small>
          </h4>
          <PointFields
            caption={arm === "upperArm" ? "Upper arm" : "Lower arm"}
            rows={POINTS.map(([key, label]) => ({ label, path: ["truck", arm, key] }))}
          />
        </section>
      ))}
      <FieldRow path={["truck", "wheelbase"]} />
    </>
  );
}
