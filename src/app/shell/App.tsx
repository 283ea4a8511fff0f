import "./app.css";
import { useEffect } from "react";
import { useStore } from "zustand";
import { StagePanel } from "../clear/StagePanel.tsx";
import { VerdictPanel } from "../clear/VerdictPanel.tsx";
import { DocReader } from "../docs/DocReader.tsx";
import { HelpKey } from "../measure/fields/FieldRow.tsx";
import { IssuePanel } from "../measure/IssuePanel.tsx";
import { MeasurePanel } from "../measure/MeasurePanel.tsx";
import { NeedsPanel } from "../measure/NeedsPanel.tsx";
import { StartTruck } from "../measure/worksheet/StartTruck.tsx";
import { Cautions } from "../parts/ConfirmedNotes.tsx";
import { focusOn } from "../parts/focusOn.ts";
import { Late, LateBody } from "../parts/late.tsx";
import { useSettled } from "../parts/useSettled.ts";
import { PacketLayer } from "../show/packet/PacketLayer.tsx";
import { ShowLayers } from "../show/ShowLayers.tsx";
import { goToStation, useStation } from "../state/address.ts";
import { notFetched, tell } from "../state/notice.ts";
import { setStage, useStage } from "../state/stageSettings.ts";
import { useDoubtedRoot } from "../state/useDoubts.ts";
import { DropTarget } from "./DropTarget.tsx";
import { Heading } from "./heading/Heading.tsx";
import { RoomsBelow, StationRooms } from "./StationRooms.tsx";
import { Stations, stationTitle } from "./Stations.tsx";
import { savesOpen } from "./saves/savesOpen.ts";
import { useDockOpen } from "./useDockOpen.ts";

/** The workbench: one truck and its answer on top, whichever step of the job is at hand below. */
export function App() {
  const station = useStation();
  const isDockOpen = useDockOpen(station);
  const { truck, document } = useSettled(isDockOpen);
  const isFilled = useFill() && station !== "show" && truck !== null;
  useDoubtedRoot(truck);
  return (
    <DropTarget>
      <div className="page-top" inert={isFilled}>
        <SkipLinks />
        <HelpKey />
        <Heading truck={truck} />
        <Stations />
      </div>
      <main
        // Whoever comes by a station's link goes on from here.
        tabIndex={-1}
        aria-label={stationTitle(station)}
        data-filled={isFilled || undefined}
      >
        <div inert={isFilled}>
          <IssuePanel />
        </div>
        {!truck && document !== null && (
          <div className="measuring">
            <NeedsPanel />
            {station === "measure" && <MeasurePanel truck={null} />}
          </div>
        )}
        {truck && (
          <div className={`station station-${station}`}>
            <VerdictPanel truck={truck} />
            {/* One stage for all steps: it is dear to set up, and keeps where it was looked at from. */}
            {station !== "show" && <StagePanel truck={truck} isAlone={station === "build"} />}
            <StationRooms station={station} truck={truck} document={document} />
          </div>
        )}
        {truck && (
          <div className="rooms-below" inert={isFilled}>
            <RoomsBelow station={station} truck={truck} />
          </div>
        )}
      </main>
      <div inert={isFilled}>
        <Cautions />
      </div>
      <ShowLayers />
      <PacketLayer />
      <StartTruck />
      <DocReader />
      <Saves />
    </DropTarget>
  );
}

// The list is loaded where somebody opens it, and stays: what is being made goes on when it is closed.
const SAVES = new LateBody(async () => (await import("./saves/SavesDialog.tsx")).default);

const SAVES_PROPS = {};

function Saves() {
  const isOpen = useStore(savesOpen, (s) => s.isOpen);
  const missing = () => {
    savesOpen.setState({ isOpen: false });
    tell(notFetched("This list"));
  };
  return isOpen || SAVES.body !== null ? (
    <Late of={SAVES} props={SAVES_PROPS} words="" onMissing={missing} />
  ) : null;
}

/** Past the heading by one key: first in the tab order, seen only when they have the focus. */
function SkipLinks() {
  return (
    <div className="skip-links">
      <button type="button" className="button" onClick={() => focusFirst(".verdict")}>
        Skip to the answer
      </button>
      <button type="button" className="button" onClick={() => focusFirst(".stage")}>
        Skip to the picture
      </button>
      <button
        type="button"
        className="button"
        onClick={() => {
          goToStation("measure");
          // The fields are there when the page has been drawn anew.
          requestAnimationFrame(() => focusFirst("[data-field] input, [data-field] select"));
        }}
      >
        Skip to the truck's numbers
      </button>
    </div>
  );
}

function focusFirst(selector: string): void {
  focusOn(document.querySelector<HTMLElement>(selector));
}

/** Whether the stage fills the window; Escape gives the page back. */
function useFill(): boolean {
  const isFilled = useStage((s) => s.isFilled);
  useEffect(() => {
    if (!isFilled) return;
    const listen = (event: KeyboardEvent) => {
      if (event.key === "Escape" && !event.defaultPrevented) setStage({ isFilled: false });
    };
    addEventListener("keydown", listen);
    return () => removeEventListener("keydown", listen);
  }, [isFilled]);
  return isFilled;
}
