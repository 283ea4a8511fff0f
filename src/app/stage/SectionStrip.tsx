import { useId } from "react";
import { amountText, lengthText } from "../../studies/wording/lengths.ts";
import { CutShort } from "../parts/CutShort.tsx";
import { shapeFile } from "../parts/reportFiles.ts";
import { SaveMenu } from "../parts/SaveMenu.tsx";
import { setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { useAnswer } from "../work/useAnswer.ts";
import { SECTION_AXES, sectionRange } from "./sectionRange.ts";
import { useEnvelope } from "./useEnvelope.ts";

export type SectionStripProps = {
  truck: Truck;
};

/** mm that the slider moves in one step: an eighth of an inch, or 2 mm. */
const STEP = { in: 3.175, mm: 2 } as const;

/** mm. Planes this near are the same: the slider was not moved. */
const SAME_PLACE = 0.05;

/** Asked of no truck. */
const NO_PLANE = { axis: "x", at: 0 } as const;

/** Moves the section plane, and says what comes nearest in it. */
export function SectionStrip({ truck }: SectionStripProps) {
  const id = useId();
  const plane = useStage((s) => s.section);
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const section = useAnswer("section", plane && truck, {
    question: { plane: plane ?? NO_PLANE, travel, steer },
    given: useEnvelope(truck)?.answer ?? null,
  });
  const envelope = useStage((s) => s.envelope);
  const format = useFormat();
  if (plane === null) return null;
  const failure = section?.failure;
  const nearest = section?.answer?.nearest;
  const { low, high, start } = sectionRange(truck, plane.axis, "left");
  const place = `${plane.axis} = ${lengthText(plane.at, format)}`;
  const short = SECTION_AXES.find(({ axis }) => axis === plane.axis)?.short;
  return (
    <div className="stage-strip">
      <label htmlFor={id}>Section</label>
      <input
        id={id}
        type="range"
        min={low}
        max={high}
        step={STEP[format.units]}
        value={plane.at}
        aria-valuetext={`${lengthText(plane.at, format)} ${short}`}
        onChange={(event) => setStage({ section: { axis: plane.axis, at: Number(event.target.value) } })}
      />
      <output htmlFor={id} className="strip-value">
        {place}
        {Math.abs(plane.at - start) < SAME_PLACE && ", wheel center"}
      </output>
      <p className="strip-note">
        {failure
          ? `It could not be cut: ${failure}`
          : nearest &&
            `In this plane the ${nearest.side} envelope ${
              nearest.distanceInPlane > 0 ? `is ${amountText(nearest.distanceInPlane, format)} from` : "meets"
            } the ${nearest.part}.`}
      </p>
      <SaveMenu
        of="the section"
        files={(["dxf", "svg"] as const).map((kind) =>
          shapeFile(truck, {
            format: kind,
            choice: envelope?.choice ?? "whole",
            travel: envelope?.travel ?? 0,
            plane,
          }),
        )}
      />
      {section && <CutShort study="section" of={[section]} />}
    </div>
  );
}
