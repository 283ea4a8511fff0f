import "./saves.css";
import { useEffect, useRef } from "react";
import { useStore } from "zustand";
import { plotNames, plotSpec } from "../../clear/plots/plotSpecs.ts";
import { plotsCsv } from "../../clear/plots/plotsCsv.ts";
import { jumpTo } from "../../parts/JumpBar.tsx";
import { openLayer } from "../../parts/layer.ts";
import { contentsOf } from "../../parts/packetPages.ts";
import { reportFile, stemOf, unitWords } from "../../parts/reportFiles.ts";
import { type SavedFile, useSaving } from "../../parts/useSaving.ts";
import { takePicture } from "../../stage/takePicture.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { saveFile } from "../share/saveFile.ts";
import { KnuckleSaves } from "./KnuckleSaves.tsx";
import { reportSaves } from "./reportSaves.ts";
import { SaveGroup } from "./SaveGroup.tsx";
import { SweptSaves } from "./SweptSaves.tsx";
import { savesOpen } from "./savesOpen.ts";

/** One list of everything that can be saved of the truck shown: what it is, its format and its unit. */
export default function SavesDialog() {
  const dialog = useRef<HTMLDialogElement>(null);
  const truck = useWorkbench((s) => s.truck);
  const isOpen = useStore(savesOpen, (s) => s.isOpen);
  const { told, save, tell, putAway } = useSaving();
  useEffect(() => {
    if (isOpen) dialog.current!.showModal();
  }, [isOpen]);
  if (!isOpen) return null;
  // Closed as a dialog, it gives the focus back to what opened it.
  const close = () => dialog.current!.close();
  const onSave = (file: SavedFile) => void save(file);
  const leaveTo = (go: () => void) => {
    close();
    go();
  };
  return (
    <dialog
      ref={dialog}
      className="saves"
      aria-labelledby="saves-title"
      onClose={() => savesOpen.setState({ isOpen: false })}
    >
      <header className="saves-head">
        <h2 id="saves-title">Everything that can be saved</h2>
        <button type="button" className="button" onClick={close}>
          Close
        </button>
      </header>
      {/* Its room is there from the start: nothing moves when a file is made. */}
      <div className="saves-told">
        <span role="status">{told?.text ?? "A file is made when its Save is pressed."}</span>
        {told?.isBusy && <progress aria-label={told.text} max={1} value={told.share ?? undefined} />}
        {told?.isBusy && (
          <button type="button" className="button" onClick={putAway}>
            Cancel
          </button>
        )}
      </div>
      <div className="saves-list">
        <SetupSave onTold={tell} />
        {truck && (
          <>
            <SweptSaves truck={truck} onSave={onSave} />
            <SaveGroup title="Tables for a spreadsheet (CSV)" files={tables(truck)} onSave={onSave}>
              <p className="saves-note">
                Lengths in {unitWords(truck)}, angles in degrees; every column says its unit.
              </p>
            </SaveGroup>
            <SaveGroup title="The picture (PNG)" files={[pictureFile(truck)]} onSave={onSave} />
            <KnuckleSaves truck={truck} onSave={onSave} />
            <SaveGroup title="Every report (JSON)" files={reportSaves(truck)} onSave={onSave}>
              <p className="saves-note">
                As the command line prints them; lengths in {unitWords(truck)}, angles in degrees.
              </p>
            </SaveGroup>
            <section className="saves-group" aria-label="To print, and what needs a choice first">
              <h3>To print (or as a PDF), and what needs a choice first</h3>
              <ul>
                {elsewhere(truck).map(({ name, way, go }) => (
                  <li key={name}>
                    <span>{name}</span>
                    <button
                      type="button"
                      className="button"
                      aria-label={`${way}: ${name}`}
                      onClick={() => leaveTo(go)}
                    >
                      {way}
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          </>
        )}
      </div>
    </dialog>
  );
}

/** The setup itself, where the browser lets one pick. */
function SetupSave({ onTold }: { onTold: (text: string) => void }) {
  const file = useWorkbench((s) => s.file);
  const save = async () => {
    const saved = await saveFile(workbench);
    if (saved === "saved") onTold(`Saved ${workbench.getState().file}.`);
    if (saved === "failed") onTold("Not saved: the file could not be written; try another folder.");
  };
  return (
    <section className="saves-group" aria-label="The setup">
      <h3>The setup: the truck with its variants</h3>
      <ul>
        <li>
          <span>
            Setup file (JSON), to open here again <small>{file || "setup.json"}</small>
          </span>
          <button
            type="button"
            className="button"
            aria-label="Save the setup file"
            onClick={() => void save()}
          >
            Save
          </button>
        </li>
      </ul>
    </section>
  );
}

function tables(truck: Truck): readonly SavedFile[] {
  return [
    reportFile(
      truck,
      { of: "sweep csv" },
      "The sweep: alignment and gaps over height straight ahead, over steering at travel 0, over roll, and at each part’s worst pose",
    ),
    reportFile(truck, { of: "map csv" }, "The map: the gap at each height and steering angle"),
    {
      name: "Every plot’s curves, at the pose shown (CSV)",
      file: `${stemOf(truck)}-curves.csv`,
      type: "text/csv",
      make: () => {
        const { travel, steer } = workbench.getState();
        const ask = { truck, others: [], scale: "angle", travel, steer, isFine: true } as const;
        return plotsCsv(
          plotNames(truck).flatMap(({ id }) => plotSpec(id, ask) ?? []),
          truck.setup.units,
        );
      },
    },
  ];
}

function pictureFile(truck: Truck): SavedFile {
  return {
    name: "The picture as it stands now",
    file: `${stemOf(truck)}.png`,
    type: "image/png",
    make: async () => {
      const picture = await takePicture();
      if (picture === null) throw new Error("no picture is shown at this step");
      return picture;
    },
  };
}

/** What is made at a place of its own. */
function elsewhere(truck: Truck) {
  const packet = {
    name: `Print packet: ${contentsOf(truck)}`,
    way: "Open",
    go: () => openLayer("packet"),
  };
  return [packet, ...ELSEWHERE];
}

const ELSEWHERE = [
  { name: "Customer sheet, one page", way: "Open", go: () => openLayer("sheet") },
  {
    name: "One plot as a drawing (SVG) or table: enlarge it",
    way: "Go there",
    go: () => jumpTo("clear", "#plots-title"),
  },
  {
    name: "Fit chart (CSV, JSON): pick two fields",
    way: "Go there",
    go: () => jumpTo("choose", "[data-fold='chart'] > summary"),
  },
  {
    name: "What was solved for (JSON): pick a field",
    way: "Go there",
    go: () => jumpTo("choose", "[data-fold='solve'] > summary"),
  },
] as const;
