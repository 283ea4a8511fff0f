import { memo, type ReactElement, useDeferredValue, useMemo } from "react";
import { AligningPanel } from "../choose/aligning/AligningPanel.tsx";
import { DockAnswer } from "../choose/compare/DockAnswer.tsx";
import { FanPanel } from "../choose/compare/FanPanel.tsx";
import { useVariantTrucks } from "../choose/compare/useVariantTrucks.ts";
import { VariantsPanel } from "../choose/compare/VariantsPanel.tsx";
import { SearchFolds } from "../choose/SearchFolds.tsx";
import { AlignmentPanel } from "../clear/AlignmentPanel.tsx";
import { AirPanel } from "../clear/air/AirPanel.tsx";
import { FloorPanel } from "../clear/floor/FloorPanel.tsx";
import { GapPanel } from "../clear/GapPanel.tsx";
import { GeometryPanel } from "../clear/geometry/GeometryPanel.tsx";
import { LimitPanel } from "../clear/limits/LimitPanel.tsx";
import { MapEnds } from "../clear/map/MapEnds.tsx";
import { MapLimits } from "../clear/map/MapLimits.tsx";
import { MapPanel } from "../clear/map/MapPanel.tsx";
import { PoseControls } from "../clear/PoseControls.tsx";
import { PoseSentence } from "../clear/PoseSentence.tsx";
import { CurveDock } from "../clear/plots/CurveDock.tsx";
import { PlotsPanel } from "../clear/plots/PlotsPanel.tsx";
import { MeasurePanel } from "../measure/MeasurePanel.tsx";
import { SetupPanel } from "../measure/SetupPanel.tsx";
import { Fold } from "../parts/Fold.tsx";
import { JumpBar } from "../parts/JumpBar.tsx";
import { Late, LateBody } from "../parts/late.tsx";
import { useCalm } from "../parts/useCalm.ts";
import type { Station } from "../state/address.ts";
import type { Truck } from "../state/truck.ts";
import type { TypedDocument } from "../state/typedDocument.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { useDockOpen } from "./useDockOpen.ts";

// What a customer sees draws its own pictures: loaded where it is asked for.
const COUNTER = new LateBody(async () => (await import("../show/counter/CounterPanel.tsx")).CounterPanel);

// Forms, drawings and sheets of the part are loaded where it is built.
const BUILD = new LateBody(async () => (await import("../build/BuildRooms.tsx")).BuildRooms);

// These follow when what is above them has had its turn.
const Plots = memo(PlotsPanel);
const Curves = memo(CurveDock);
const Variants = memo(VariantsPanel);
const Fan = memo(FanPanel);

export type StationRoomsProps = {
  station: Station;
  truck: Truck;
  /** Its variants are in it. */
  document: TypedDocument | null;
};

/** What stands beside the stage at each step of the job. */
export function StationRooms({ station, truck, document }: StationRoomsProps): ReactElement {
  switch (station) {
    case "measure":
      return (
        <>
          <MeasurePanel truck={truck} />
          <Controls truck={truck} />
          <div className="answers">
            <PoseSentence truck={truck} />
            <GapPanel truck={truck} />
            <AlignmentPanel truck={truck} />
          </div>
        </>
      );
    case "clear":
      return <ClearRooms truck={truck} />;
    case "choose":
      return <ChooseRooms truck={truck} document={document} />;
    case "build":
      return <Late of={BUILD} props={{ truck }} words="Setting up what is built…" />;
    case "show":
      return <Late of={COUNTER} props={{}} words="Setting up the pictures…" className="station-wait" />;
  }
}

function Controls({ truck }: { truck: Truck }) {
  return (
    <div className="controls">
      <PoseControls truck={truck} />
    </div>
  );
}

function ClearRooms({ truck }: { truck: Truck }) {
  // Lists of what holds over a range are sorted anew when a drag of a part ends: nothing moves under the hand.
  const calm = useCalm(truck);
  return (
    <>
      {/* On a phone under the picture, which is whole on the first screen, and over all it leads to. */}
      <JumpBar
        places={[
          ["Map", "#map-title"],
          ["Pose", "#pose-sentence-title"],
          ["Nearest", "#gaps-title"],
          ["Alignment", "#alignment-title"],
          ["Limits", "[data-fold='limits'] > summary"],
          ["Floor", "[data-fold='floor'] > summary"],
          ["Air", "[data-fold='air'] > summary"],
          ["Geometry", "[data-fold='geometry'] > summary"],
          ["Plots", "#plots-title"],
        ]}
      />
      <Controls truck={truck} />
      <div className="answers">
        <MapPanel truck={truck} />
        {/* Under the map, on a phone under the controls: it grows by lines while the dot is dragged. */}
        <div className="pose-answers">
          <MapLimits truck={calm} />
          <MapEnds truck={calm} />
          <PoseSentence truck={truck} />
        </div>
        <GapPanel truck={calm} />
        <AlignmentPanel truck={truck} />
        <div className="folds">
          <LimitPanel truck={truck} calm={calm} />
          <FloorPanel truck={truck} />
          <AirPanel truck={truck} />
          <GeometryPanel truck={truck} />
        </div>
      </div>
    </>
  );
}

function ChooseRooms({ truck, document }: Omit<StationRoomsProps, "station">) {
  const columns = useVariantTrucks(document);
  const later = useDeferredValue(truck);
  return (
    <>
      <Controls truck={truck} />
      <div className="choices">
        <JumpBar
          places={[
            ["Fields", "[data-fold='fields'] > summary"],
            ["Variants", "#variants-title"],
            ["Fan a field", ".fan > summary"],
            ["Solve for", "[data-fold='solve'] > summary"],
            ["Fit chart", "[data-fold='chart'] > summary"],
            ["What to change", "[data-fold='change'] > summary"],
            ["Odds", "[data-fold='odds'] > summary"],
            ["Alignment card", "#aligning-title"],
          ]}
        />
        <div className="folds">
          <Fold id="fields" title="Fields: change a number, the curves follow" isOpen={false}>
            <SetupPanel truck={truck} hasWorksheet={false} />
          </Fold>
        </div>
        <Variants columns={columns} />
        <Fan truck={later} />
        <SearchFolds truck={later} />
        <AligningPanel truck={truck} />
      </div>
    </>
  );
}

/** What is too wide to stand beside the stage: below it the plots, or along the foot of the window the curves one chose. */
export function RoomsBelow({ station, truck }: Omit<StationRoomsProps, "document">) {
  switch (station) {
    case "clear":
      return <PlotsBelow truck={truck} />;
    case "measure":
    case "choose":
      return <Dock station={station} truck={truck} />;
    case "build":
    case "show":
      return null;
  }
}

function Dock({ station, truck }: Omit<StationRoomsProps, "document">) {
  const format = useFormat();
  const isOpen = useDockOpen(station);
  const later = useDeferredValue(truck);
  const answer = useMemo(() => <DockAnswer truck={later} format={format} />, [later, format]);
  // Open, its curves come before all else on the page.
  const board = useWorkbench((s) => (isOpen ? s.truck : null));
  return (
    <Curves truck={board ?? later} rested={later} isOpen={isOpen}>
      {answer}
    </Curves>
  );
}

function PlotsBelow({ truck }: { truck: Truck }) {
  return <Plots truck={useDeferredValue(truck)} />;
}
