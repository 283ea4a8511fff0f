import { useCanRedo, useCanUndo } from "../../state/documentUse.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { StepsMenu } from "./StepsMenu.tsx";

/** Takes steps back and forth: Ctrl+Z and Ctrl+Shift+Z do the same; the list beside them names the steps. */
export function StepButtons() {
  const undo = useWorkbench((s) => s.undo);
  const redo = useWorkbench((s) => s.redo);
  const canUndo = useCanUndo();
  const canRedo = useCanRedo();
  return (
    <span className="heading-group">
      <button
        type="button"
        className="button heading-icon"
        aria-label="Undo"
        disabled={!canUndo}
        onClick={undo}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M8 4L4 8L8 12M4 8H12A4 4 0 0 1 12 16H8" />
        </svg>
      </button>
      <button
        type="button"
        className="button heading-icon"
        aria-label="Redo"
        disabled={!canRedo}
        onClick={redo}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M12 4L16 8L12 12M16 8H8A4 4 0 0 0 8 16H12" />
        </svg>
      </button>
      <StepsMenu />
    </span>
  );
}
