import type { Setup } from "../../setup/types/types.ts";
import { heightAgainst, heightText, stanceAt, travelText } from "../../studies/wording/poseWords.ts";
import { MM_PER_INCH, mmFromUnits } from "../../units/lengthUnits.ts";
import { Scale, type ScaleMark } from "../parts/Scale.tsx";
import { lengthFormatOf, lengthStepOf } from "../state/preferences.ts";
import { useMovedPose, useWorkbench } from "../state/useWorkbench.ts";
import { readTravel } from "./typedPose.ts";

export type TravelControlProps = {
  /** Its units decide the steps: sixteenths of an inch, or millimeters. */
  setup: Setup;
};

/** The height of the wheels against the body: droop at the left end, bump at the right. */
export function TravelControl({ setup }: TravelControlProps) {
  const travel = useMovedPose((s) => s.travel);
  const setTravel = useWorkbench((s) => s.setTravel);
  const lengths = useWorkbench((s) => s.preferences.lengths);
  const format = lengthFormatOf(lengths, setup.units);
  const { size, units } = lengthStepOf(lengths, setup.units);
  const { droop, bump } = setup.travel;
  const unit = format.units === "in" ? MM_PER_INCH : 10;
  const marks: ScaleMark[] = [];
  for (let i = Math.ceil(droop / unit); i <= bump / unit; i++) {
    marks.push({ at: i * unit, isLong: i === 0 });
  }
  return (
    <Scale
      label="Travel"
      hint="bump: wheel up, truck low"
      value={travel}
      min={droop}
      max={bump}
      step={mmFromUnits(size, units)}
      pageSteps={format.units === "in" ? 8 : 10}
      readout={travelText(travel, format)}
      read={(text) => readTravel(text, setup.travel, units, format)}
      example={format.units === "in" ? "2 bump, 1 1/2 droop" : "50 bump, 40 droop"}
      note={stanceAt(travel, setup) ?? heightAgainst(travel, setup, format)}
      spoken={heightText(travel, setup, format)}
      marks={marks}
      ends={[
        { word: "droop", name: "end of droop" },
        { word: "bump", name: "end of bump" },
      ]}
      onChange={setTravel}
    />
  );
}
