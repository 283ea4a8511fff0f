import { useRef } from "react";
import { workbench } from "../../state/workbench.ts";
import { openFiles } from "../share/openFiles.ts";

/** Opens a setup from this machine, with its mesh files. */
export function OpenButton() {
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
          void openFiles(workbench, files);
        }}
      />
    </>
  );
}
