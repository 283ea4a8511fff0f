import { useRef } from "react";
import { openFile } from "../state/openFile.ts";
import { workbench } from "../state/workbench.ts";

/** Opens a setup file from this machine. */
export function OpenButton() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        Open a setup…
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        aria-label="Setup file"
        hidden
        onChange={(event) => {
          const file = event.target.files?.[0];
          // Emptied, so that picking the same file again after mending it is a change.
          event.target.value = "";
          if (file) void openFile(workbench, file);
        }}
      />
    </>
  );
}
