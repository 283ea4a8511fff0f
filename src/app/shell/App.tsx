import "./app.css";
import { AligningPanel } from "../choose/aligning/AligningPanel.tsx";
import { Comparisons } from "../choose/compare/Comparisons.tsx";
import { AlignmentPanel } from "../clear/AlignmentPanel.tsx";
import { AirPanel } from "../clear/air/AirPanel.tsx";
import { FloorPanel } from "../clear/floor/FloorPanel.tsx";
import { GapPanel } from "../clear/GapPanel.tsx";
import { GeometryPanel } from "../clear/geometry/GeometryPanel.tsx";
import { LimitPanel } from "../clear/limits/LimitPanel.tsx";
import { MapPanel } from "../clear/map/MapPanel.tsx";
import { PoseControls } from "../clear/PoseControls.tsx";
import { PoseSentence } from "../clear/PoseSentence.tsx";
import { StagePanel } from "../clear/StagePanel.tsx";
import { VerdictPanel } from "../clear/VerdictPanel.tsx";
import { IssuePanel } from "../measure/IssuePanel.tsx";
import { NeedsPanel } from "../measure/NeedsPanel.tsx";
import { SetupPanel } from "../measure/SetupPanel.tsx";
import { Cautions } from "../parts/Cautions.tsx";
import { CounterLayer } from "../show/counter/CounterLayer.tsx";
import { SheetLayer } from "../show/sheet/SheetLayer.tsx";
import { useDoubtedRoot } from "../state/useDoubtedRoot.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { DropTarget } from "./DropTarget.tsx";
import { Heading } from "./heading/Heading.tsx";
import { JumpBar } from "./JumpBar.tsx";

/** The workbench: the answer on top, the truck and its controls together, then the numbers. */
export function App() {
  const truck = useWorkbench((s) => s.truck);
  const hasDocument = useWorkbench((s) => s.document !== null);
  useDoubtedRoot(truck);
  return (
    <DropTarget>
      <Heading />
      <main>
        <IssuePanel />
        {!truck && hasDocument && (
          <div className="measuring">
            <NeedsPanel />
            <SetupPanel truck={null} />
          </div>
        )}
        {truck && (
          <>
            <div className="workbench">
              <VerdictPanel />
              <StagePanel truck={truck} />
              <div className="controls">
                <PoseControls truck={truck} />
                <PoseSentence truck={truck} />
              </div>
              <div className="answers">
                <MapPanel truck={truck} />
                <GapPanel truck={truck} />
                <AlignmentPanel truck={truck} />
                <AligningPanel truck={truck} />
                <div className="folds">
                  <LimitPanel truck={truck} />
                  <FloorPanel truck={truck} />
                  <AirPanel truck={truck} />
                  <GeometryPanel truck={truck} />
                </div>
              </div>
              <SetupPanel truck={truck} />
              <JumpBar />
            </div>
            <Comparisons truck={truck} />
          </>
        )}
      </main>
      <Cautions />
      <CounterLayer />
      <SheetLayer />
    </DropTarget>
  );
}
