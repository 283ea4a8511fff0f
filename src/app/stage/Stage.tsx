import "./stage.css";
import { Canvas } from "@react-three/fiber";
import { useCallback, useRef, useState } from "react";
import { STAGE_LOADING } from "../../studies/wording/stageTexts.ts";
import { pressedPart, useScanPick } from "../state/scanPick.ts";
import { useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { workbench } from "../state/workbench.ts";
import type { Rims } from "./drawing.ts";
import { FrameDrawer } from "./FrameDrawer.tsx";
import { useFirstPlay } from "./firstPlay.ts";
import { KnuckleHandles } from "./handles/KnuckleHandles.tsx";
import { PictureFollower } from "./handles/PictureFollower.tsx";
import { StageHandles } from "./handles/StageHandles.tsx";
import { OverlayWriter } from "./OverlayWriter.tsx";
import { PickPlaces } from "./PickPlaces.tsx";
import { PictureTaker } from "./PictureTaker.tsx";
import { PatientResize } from "./patientResize.ts";
import { quietClock, RedrawOnRestore } from "./redraw.tsx";
import { StageKeys } from "./StageKeys.tsx";
import { StageScene } from "./StageScene.tsx";
import { worstOf } from "./worst.ts";

quietClock();

const RESIZE = { scroll: true, debounce: { scroll: 50, resize: 0 }, polyfill: PatientResize };

export type StageProps = {
  truck: Truck;
  /** One knuckle is drawn alone. */
  isAlone: boolean;
  /** Must stay what it is: a canvas is made for it. */
  rims: Rims;
};

/** The truck in three dimensions, with what is written on the picture laid over it. Draws only when something changed. */
export default function Stage({ truck, isAlone, rims }: StageProps) {
  const frame = useRef<HTMLDivElement>(null);
  const overlay = useRef<SVGSVGElement>(null);
  const toWorst = useRef<HTMLButtonElement>(null);
  const hasHandles = useStage((s) => s.hasHandles);
  const isPicking = useScanPick((s) => s.asked !== null);
  const isPressing = useScanPick((s) => pressedPart(s) !== null);
  const [isDrawn, setDrawn] = useState(false);
  const onDrawn = useCallback(() => setDrawn(true), []);
  useFirstPlay(truck, isDrawn && !isAlone);
  return (
    <div
      ref={frame}
      className={`stage${isPicking ? " stage-picking" : ""}${isPressing ? " stage-pressing" : ""}`}
      role="application"
      aria-label={`Picture of the ${isAlone ? "knuckle" : "truck"}: arrow keys turn it, plus and minus zoom, F fills the window`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it is turned and zoomed by keys
      tabIndex={0}
    >
      <Canvas
        orthographic
        frameloop="demand"
        dpr={[1, 2]}
        gl={{ antialias: rims === "always" }}
        resize={RESIZE}
        camera={{ up: [0, 0, 1], position: [4000, 3000, 2000], near: 10, far: 14000 }}
      >
        <StageScene truck={truck} isAlone={isAlone} />
        <OverlayWriter
          truck={truck}
          isAlone={isAlone}
          overlay={overlay}
          toWorst={toWorst}
          onDrawn={onDrawn}
        />
        <PictureTaker truck={truck} overlay={overlay} rims={rims} />
        <FrameDrawer rims={rims} />
        <StageKeys target={frame} />
        <RedrawOnRestore />
        {(hasHandles || isPicking) && <PictureFollower />}
      </Canvas>
      {!isDrawn && (
        <p className="stage-message stage-waiting" role="status">
          {STAGE_LOADING}
        </p>
      )}
      <svg ref={overlay} className="stage-overlay" aria-hidden="true" />
      <button ref={toWorst} type="button" className="stage-to-worst" hidden onClick={goToWorst} />
      {hasHandles && !isPicking && (isAlone ? <KnuckleHandles /> : <StageHandles />)}
      {!isAlone && <PickPlaces />}
    </div>
  );
}

function goToWorst(): void {
  const { setPose, truck } = workbench.getState();
  const worst = truck && worstOf(truck);
  if (worst) setPose(worst.travel, worst.steer);
}
