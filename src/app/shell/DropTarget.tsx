import "./dropTarget.css";
import { type DragEvent, type ReactNode, useRef, useState } from "react";
import { goToField } from "../measure/fields/fieldAsked.ts";
import { workbench } from "../state/workbench.ts";
import { openFiles } from "./share/openFiles.ts";

export type DropTargetProps = {
  /** The whole page: files may be dropped anywhere on it. */
  children: ReactNode;
};

/** Opens a setup dropped on the page, with its mesh files or before them. */
export function DropTarget({ children }: DropTargetProps) {
  const [isOver, setIsOver] = useState(false);
  // Entering a child also leaves its parent: the page is left when as many are left as were entered.
  const depth = useRef(0);
  const watch = (change: 1 | -1) => (event: DragEvent) => {
    if (!event.dataTransfer.types.includes("Files")) return;
    depth.current = Math.max(0, depth.current + change);
    setIsOver(depth.current > 0);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    depth.current = 0;
    setIsOver(false);
    void openFiles(workbench, [...event.dataTransfer.files], goToField);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is the mouse's way; the button opens files for every other
    <div
      className="page"
      onDragEnter={watch(1)}
      onDragLeave={watch(-1)}
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      {children}
      {isOver && (
        <p className="drop-hint">
          Drop a setup file, with its mesh files, to open it; or a scan alone, to add it to this truck
        </p>
      )}
    </div>
  );
}
