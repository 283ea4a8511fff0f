import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { workbench } from "../../state/workbench.ts";

/** Takes a reading out of the list; undo brings it back. @param path of the reading, or of its number */
export function RemoveReading({ path }: { path: KeyPath }) {
  return (
    <button
      type="button"
      className="link-button"
      onClick={() => workbench.getState().removeItem(["readings"], Number(path[1]))}
    >
      Take it off the worksheet
    </button>
  );
}
