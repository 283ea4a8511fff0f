import { pressedPart, useScanPick } from "../state/scanPick.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { BodySide } from "./Body.tsx";
import { SHOWN } from "./drawStage.ts";
import { EnvelopeView } from "./EnvelopeView.tsx";
import { Floor } from "./Floor.tsx";
import { FloorShade } from "./FloorShade.tsx";
import { FrontEndSide } from "./FrontEndSide.tsx";
import { Ghost } from "./Ghost.tsx";
import { InkProvider } from "./InkProvider.tsx";
import { JointCones } from "./JointCones.tsx";
import { Knuckle } from "./Knuckle.tsx";
import { LoadArrows } from "./LoadArrows.tsx";
import { MirroredSide } from "./MirroredSide.tsx";
import { ReadingEllipses } from "./ReadingEllipses.tsx";
import { ScanPicker } from "./ScanPicker.tsx";
import { SectionClip } from "./SectionClip.tsx";
import { Springs } from "./Springs.tsx";
import { SteeringLink } from "./Steering.tsx";
import { TrimLines } from "./TrimLines.tsx";
import { ViewCamera } from "./ViewCamera.tsx";

export type StageSceneProps = {
  truck: Truck;
  /** One knuckle alone, with what rides on it, for who builds it. */
  isAlone: boolean;
};

/** Everything on the stage, in vehicle axes and mm. */
export function StageScene({ truck, isAlone }: StageSceneProps) {
  const side = useStage((s) => s.side);
  return (
    <InkProvider>
      <ViewCamera truck={truck} isAlone={isAlone} />
      <hemisphereLight position={[0, 0, 1]} args={["#ffffff", "#b9b4a8", 2.4]} />
      <directionalLight position={[2000, 3000, 4000]} intensity={0.9} />
      {isAlone ? (
        <group name={SHOWN}>
          <MirroredSide side={side}>
            <Knuckle truck={truck} side={side} isAlone />
          </MirroredSide>
          <LoadArrows />
        </group>
      ) : (
        <WholeTruck truck={truck} />
      )}
    </InkProvider>
  );
}

function WholeTruck({ truck }: { truck: Truck }) {
  const isPressing = useScanPick((s) => pressedPart(s) !== null);
  return (
    <>
      <ScanPicker truck={truck} />
      <group visible={!isPressing}>
        <Floor truck={truck} />
        <FloorShade truck={truck} />
        <group name={SHOWN}>
          <SteeringLink truck={truck} />
          <FrontEndSide truck={truck} side="left" />
          <FrontEndSide truck={truck} side="right" />
          <EnvelopeView truck={truck} />
          <Springs truck={truck} />
          <JointCones truck={truck} />
        </group>
        <BodySide truck={truck} side="left" />
        <BodySide truck={truck} side="right" />
        <Ghost truck={truck} />
        <ReadingEllipses truck={truck} />
        <TrimLines />
      </group>
      <SectionClip />
    </>
  );
}
