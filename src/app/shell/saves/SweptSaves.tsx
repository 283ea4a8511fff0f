import { useState } from "react";
import { lengthText } from "../../../studies/wording/lengths.ts";
import { heightText } from "../../../studies/wording/poseWords.ts";
import { shapeFile, unitWords } from "../../parts/reportFiles.ts";
import type { SavedFile } from "../../parts/useSaving.ts";
import { ENVELOPES } from "../../stage/envelopeNames.ts";
import { SECTION_AXES, sectionRange } from "../../stage/sectionRange.ts";
import { type EnvelopeChoice, useStage } from "../../state/stageSettings.ts";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { SaveGroup } from "./SaveGroup.tsx";

export type SweptSavesProps = { truck: Truck; onSave: (file: SavedFile) => void };

/** The space the tires sweep, as surfaces and cut by a plane; what is chosen here changes nothing in the picture. */
export function SweptSaves({ truck, onSave }: SweptSavesProps) {
  const [choice, setChoice] = useState<EnvelopeChoice>("whole");
  const shown = useStage((s) => s.section);
  const [axis, setAxis] = useState(shown?.axis ?? "x");
  const travel = useWorkbench((s) => s.travel);
  const format = useFormat();
  const plane = shown?.axis === axis ? shown : { axis, at: sectionRange(truck, axis, "left").start };
  const swept = { choice, travel };
  return (
    <SaveGroup
      title="Space the tires sweep (the envelope), and sections of it"
      onSave={onSave}
      files={[
        shapeFile(truck, { format: "stl", ...swept, plane: null }),
        shapeFile(truck, { format: "glb", ...swept, plane: null }),
        shapeFile(truck, { format: "dxf", ...swept, plane }),
        shapeFile(truck, { format: "svg", ...swept, plane }),
      ]}
    >
      <div className="saves-choices">
        <label>
          Swept over{" "}
          <select value={choice} onChange={(event) => setChoice(event.target.value as EnvelopeChoice)}>
            {ENVELOPES.map(({ choice: one, label }) => (
              <option key={one} value={one}>
                {one === "stance" ? `${heightText(travel, truck.setup, format)}, all steering` : label}
              </option>
            ))}
          </select>
        </label>
        <label>
          Section{" "}
          <select value={axis} onChange={(event) => setAxis(event.target.value as typeof axis)}>
            {SECTION_AXES.map(({ axis: one, label }) => (
              <option key={one} value={one}>
                {label}
              </option>
            ))}
          </select>
        </label>
      </div>
      <p className="saves-note">
        Cut at {axis} = {lengthText(plane.at, format)}
        {plane === shown ? ", as in the picture" : ", through the middle of the left wheel"}. Both tires and
        rims. An STL has no unit of its own: read it in as millimeters. The DXF says its own:{" "}
        {unitWords(truck)}.
      </p>
    </SaveGroup>
  );
}
