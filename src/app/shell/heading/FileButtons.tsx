import { useRef } from "react";
import { goToField } from "../../measure/fields/fieldAsked.ts";
import { tell } from "../../state/notice.ts";
import { workbench } from "../../state/workbench.ts";
import { savesOpen } from "../saves/savesOpen.ts";
import { openFiles } from "../share/openFiles.ts";
import { saveFile } from "../share/saveFile.ts";
import { shareBoard } from "../share/shareComparison.ts";
import { TruckMenu } from "./TruckMenu.tsx";

/** Opens, reopens, saves and shares the setup on the board. */
export function FileButtons() {
  const save = async () => {
    if ((await saveFile(workbench)) === "failed") {
      tell("The file could not be saved. The setup is kept in this browser; try another folder.");
    }
  };
  const share = async () => {
    const link = await shareBoard(workbench);
    if (!link.ok) tell(`No link: ${link.mend}.`);
    else tell("This link holds the whole setup; no server sees it.", link.url);
  };
  return (
    <span className="heading-group">
      <OpenButton />
      <TruckMenu />
      <button type="button" className="button" onClick={() => void save()}>
        Save
      </button>
      <button
        type="button"
        className="button"
        title="STL, DXF, CSV, JSON, drawings: everything that can be saved"
        onClick={() => savesOpen.setState({ isOpen: true })}
      >
        Export…
      </button>
      <button type="button" className="button" onClick={() => void share()}>
        Share
      </button>
    </span>
  );
}

/** Opens a setup from this machine, with its mesh files. */
function OpenButton() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        Open<span className="heading-wide"> a setup</span>…
      </button>
      <input
        ref={input}
        type="file"
        multiple
        accept=".json,application/json,.stl,.obj,.ply,.glb"
        aria-label="Setup file"
        hidden
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          // Emptied, so that picking the same file again after mending it is a change.
          event.target.value = "";
          void openFiles(workbench, files, goToField);
        }}
      />
    </>
  );
}
