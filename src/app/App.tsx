import "./app.css";
import { AirPanel } from "./air/AirPanel.tsx";
import { AligningPanel } from "./aligning/AligningPanel.tsx";
import { Comparisons } from "./compare/Comparisons.tsx";
import { CounterLayer } from "./counter/CounterLayer.tsx";
import { SetupPanel } from "./editing/SetupPanel.tsx";
import { FloorPanel } from "./floor/FloorPanel.tsx";
import { GeometryPanel } from "./geometry/GeometryPanel.tsx";
import { Heading } from "./heading/Heading.tsx";
import { LimitPanel } from "./limits/LimitPanel.tsx";
import { MapPanel } from "./map/MapPanel.tsx";
import { AlignmentPanel } from "./panels/AlignmentPanel.tsx";
import { Cautions } from "./panels/Cautions.tsx";
import { DropTarget } from "./panels/DropTarget.tsx";
import { GapPanel } from "./panels/GapPanel.tsx";
import { IssuePanel } from "./panels/IssuePanel.tsx";
import { JumpBar } from "./panels/JumpBar.tsx";
import { NeedsPanel } from "./panels/NeedsPanel.tsx";
import { PoseControls } from "./panels/PoseControls.tsx";
import { PoseSentence } from "./panels/PoseSentence.tsx";
import { StagePanel } from "./panels/StagePanel.tsx";
import { VerdictPanel } from "./panels/VerdictPanel.tsx";
import { SheetLayer } from "./sheet/SheetLayer.tsx";
import { useDoubtedRoot } from "./state/useDoubtedRoot.ts";
import { useWorkbench } from "./state/useWorkbench.ts";

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
