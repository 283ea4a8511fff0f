import { bothWheelAngles, lockText } from "../../studies/wording/poseWords.ts";
import { Scale, type ScaleMark } from "../parts/Scale.tsx";
import { shownPose } from "../state/shown.ts";
import { useMovedPose, useWorkbench } from "../state/useWorkbench.ts";
import { readSteer } from "./typedPose.ts";

const MARKS: readonly ScaleMark[] = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map((at) => ({
  at,
  isLong: at === 0,
}));

/** The steering input. Its left end is left lock, although + is left: the control moves the way the wheels do. */
export function SteerControl() {
  const steer = useMovedPose((s) => s.steer);
  const setSteer = useWorkbench((s) => s.setSteer);
  const pose = useMovedPose(shownPose);
  const wheels = pose?.ok && steer !== 0 ? bothWheelAngles(pose) : "";
  return (
    <Scale
      label="Steering"
      hint="% of lock"
      value={steer}
      min={-1}
      max={1}
      step={0.01}
      pageSteps={10}
      isReversed
      readout={lockText(steer)}
      read={readSteer}
      example="50 left, 30 right"
      note={wheels}
      spoken={wheels === "" ? lockText(steer) : `${lockText(steer)}, ${wheels}`}
      marks={MARKS}
      home={{ name: "Straight", value: 0 }}
      ends={[
        { word: "left lock", name: "full left lock" },
        { word: "right lock", name: "full right lock" },
      ]}
      onChange={setSteer}
    />
  );
}
