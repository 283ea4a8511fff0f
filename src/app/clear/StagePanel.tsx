import "./stagePanel.css";
import "./stagePanelNarrow.css";
import { Component, memo, type ReactNode, useDeferredValue, useEffect, useState } from "react";
import { DRAG_HINT, STAGE_LOADING } from "../../studies/wording/stageTexts.ts";
import { whenKeysRest } from "../parts/keysAtRest.ts";
import { Late, LateBody } from "../parts/late.tsx";
import { drawing, knownDrawing, type Rims } from "../stage/drawing.ts";
import { EnvelopeStrip } from "../stage/EnvelopeStrip.tsx";
import { HandleStrip } from "../stage/handles/HandleStrip.tsx";
import { KnuckleHandleStrip } from "../stage/handles/KnuckleHandleStrip.tsx";
import { SectionStrip } from "../stage/SectionStrip.tsx";
import { ShowMenu } from "../stage/ShowMenu.tsx";
import { StageLegend } from "../stage/StageLegend.tsx";
import { StageTools } from "../stage/StageTools.tsx";
import { WipeStrip } from "../stage/WipeStrip.tsx";
import { setStage, useStage } from "../state/stageSettings.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { firstAnswer } from "./firstAnswer.ts";
import { StageHint } from "./StageHint.tsx";
import { ViewButtons, WheelButtons } from "./ViewButtons.tsx";

// Its own chunk: three.js is most of the page's weight, and the answers in words need none of it. Its first picture holds
// the page for a moment, so it comes after the first answer, and when nobody types.
const fetchStage = () => import("../stage/Stage.tsx");
const STAGE = new LateBody(async () => {
  const { default: Stage } = await fetchStage();
  await firstAnswer();
  await new Promise<void>((done) => void whenKeysRest(done));
  return memo(Stage);
});

export type StagePanelProps = {
  truck: Truck;
  /** One knuckle is drawn alone, for who builds it. */
  isAlone: boolean;
};

/** The picture of the truck, or why there is none. Everything beside it works without. */
export function StagePanel({ truck, isAlone }: StagePanelProps) {
  const rims = useDrawing();
  // What is dragged is the truck's or the knuckle's: it does not go on from one to the other.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when it becomes the other, or goes
  useEffect(() => () => setStage({ hasHandles: false }), [isAlone]);
  // Drawn when keys and answers have had their turn: building its solids takes long.
  const drawn = useDeferredValue(truck);
  const isWell = useWorkbench((s) => s.view === "well");
  const hasDimensions = useStage((s) => s.hasDimensions);
  return (
    <section className="stage-panel" aria-label={isAlone ? "The knuckle" : "The truck"}>
      {rims === null ? (
        <p className="stage-message">
          This browser cannot draw in three dimensions (WebGL 2 is missing or switched off), so there is no
          picture. The answers, gaps and numbers do not need it and are complete.
        </p>
      ) : (
        <>
          <div className="stage-bar">
            <ViewButtons isAlone={isAlone} />
            <div className="stage-acts">
              {!isAlone && <ShowMenu truck={truck} />}
              <StageTools truck={truck} isAlone={isAlone} />
            </div>
          </div>
          <div className="stage-frame">
            <StageBoundary>
              {rims === undefined ? (
                <p className="stage-message" role="status">
                  {STAGE_LOADING}
                </p>
              ) : (
                <Late
                  of={STAGE}
                  props={{ truck: drawn, isAlone, rims }}
                  words={STAGE_LOADING}
                  className="stage-message"
                />
              )}
            </StageBoundary>
            {(isWell || hasDimensions || isAlone) && <WheelButtons />}
          </div>
          <p className="stage-foot">
            {!isAlone && <StageLegend truck={truck} />}
            {isAlone ? (
              <span className="stage-hint">
                <span>{DRAG_HINT}</span>
              </span>
            ) : (
              <StageHint truck={truck} />
            )}
          </p>
          {isAlone ? (
            <KnuckleHandleStrip />
          ) : (
            <>
              <HandleStrip />
              <WipeStrip truck={truck} />
              <EnvelopeStrip truck={truck} />
              <SectionStrip truck={truck} />
            </>
          )}
        </>
      )}
    </section>
  );
}

/** How the browser draws; undefined until it is asked, which holds up the page: after the first answer, as the picture does. */
function useDrawing(): Rims | null | undefined {
  const [rims, setRims] = useState(knownDrawing);
  useEffect(() => {
    if (rims !== undefined) return;
    let isGone = false;
    // Here by then; where it cannot be fetched, that is told when it is wanted.
    fetchStage().catch(() => undefined);
    void firstAnswer().then(() => isGone || setRims(drawing()));
    return () => {
      isGone = true;
    };
  }, [rims]);
  return rims;
}

export type StageBoundaryProps = {
  children: ReactNode;
};

/** Keeps a picture that fails (a driver that gives up) from taking the answers with it. */
class StageBoundary extends Component<StageBoundaryProps, { readonly message: string | null }> {
  override state = { message: null };

  static getDerivedStateFromError(error: unknown) {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { message } = this.state;
    if (message === null) return this.props.children;
    return (
      <p className="stage-message" role="alert">
        The picture could not be drawn ({message}). The answers, gaps and numbers do not need it and are
        complete.
      </p>
    );
  }
}
