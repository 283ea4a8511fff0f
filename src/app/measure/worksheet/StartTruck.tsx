import "./startTruck.css";
import { useEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { LengthUnit } from "../../../setup/types/types.ts";
import { SHORT_LINES, WORKSHEET_LINES } from "../../../setup/worksheet/worksheetLines.ts";
import { fileStem } from "../../../studies/wording/fileStem.ts";
import { ownTruckDocument } from "../../../studies/worksheet/ownTruck.ts";
import { whenThere } from "../../parts/whenThere.ts";
import { goToStation } from "../../state/address.ts";
import { workbench } from "../../state/workbench.ts";
import { goToField } from "../fields/fieldAsked.ts";
import { WaySwitch } from "../fields/WaySwitch.tsx";
import { worksheetView } from "./worksheetView.ts";

const asked = createStore<{ readonly isOpen: boolean }>()(() => ({ isOpen: false }));

/** Asks how somebody wants to measure their own truck. */
export function startOwnTruck(): void {
  asked.setState({ isOpen: true });
}

const UNITS = [
  { way: "in", label: "inches" },
  { way: "mm", label: "millimeters" },
] as const;
const STEERING = [
  { way: "rack", label: "rack" },
  { way: "pitman", label: "steering box" },
] as const;

/** Three ways to get a truck in; each begins with the assumed layout, marked so, and what was on the board is kept. */
export function StartTruck() {
  const isOpen = useStore(asked, (s) => s.isOpen);
  return isOpen ? <StartDialog /> : null;
}

function StartDialog() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [units, setUnits] = useState<LengthUnit>("in");
  const [steering, setSteering] = useState<"rack" | "pitman">("rack");
  const [name, setName] = useState("");
  useEffect(() => dialog.current!.showModal(), []);
  const close = () => asked.setState({ isOpen: false });
  const begin = (way: "short" | "full" | "scan") => {
    close();
    const own = ownTruckDocument({ units, steering, isFull: way === "full" });
    const given = name.trim();
    const named = given === "" ? own : { ...own, name: given };
    const stem = given === "" ? "my-truck" : fileStem({ name: given, variant: null }, "my-truck");
    workbench.getState().openDocument({ document: named, file: `${stem}.json` });
    worksheetView.setState({ at: null, isFields: way === "scan" });
    goToStation("measure");
    scrollTo({ top: 0 });
    if (way === "scan") goToField(["truck", "body"]);
    else
      whenThere(
        () => document.querySelector<HTMLElement>(".reading-card input"),
        (input) => input.focus({ preventScroll: true }),
      );
  };
  return (
    <dialog ref={dialog} className="start-truck" aria-labelledby="start-truck-title" onClose={close}>
      <div className="start-head">
        <h2 id="start-truck-title">Start your own truck</h2>
        <button type="button" className="button" onClick={close}>
          Close
        </button>
      </div>
      <p>
        With a tape, a plumb bob and a straightedge. What you have not read yet is taken from an assumed
        layout, drawn dashed and marked as assumed. The truck that is open now is kept under “Trucks”.
      </p>
      <label className="start-name">
        What is it called?{" "}
        <input
          type="text"
          value={name}
          maxLength={80}
          placeholder="My truck"
          onChange={(event) => setName(event.target.value)}
        />
      </label>
      <div className="start-choices">
        <WaySwitch label="Units" ways={UNITS} way={units} onChange={setUnits} />
        <WaySwitch label="Steering" ways={STEERING} way={steering} onChange={setSteering} />
      </div>
      <ul className="start-ways">
        <Way
          name={`${SHORT_LINES.length} readings`}
          about="The shortest list that gives a first verdict; more can follow."
          onBegin={() => begin("short")}
        />
        <Way
          name={`The full list, ${WORKSHEET_LINES.length} readings`}
          about="Arms, steering and the fender’s arch as well: less is assumed."
          onBegin={() => begin("full")}
        />
        <Way
          name="Points from a scan"
          about="A mesh of the truck put in place by matched points, and points taken off it; the short list for the rest."
          onBegin={() => begin("scan")}
        />
      </ul>
    </dialog>
  );
}

function Way({ name, about, onBegin }: { name: string; about: string; onBegin: () => void }) {
  return (
    <li>
      <button type="button" className="start-way" onClick={onBegin}>
        {name} <small>{about}</small>
      </button>
    </li>
  );
}
