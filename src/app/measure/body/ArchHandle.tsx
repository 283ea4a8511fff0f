import type { KeyboardEvent } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { lengthStep } from "../../state/selectors.ts";
import { workbench } from "../../state/workbench.ts";
import type { SidePoint } from "./archGeometry.ts";
import { movePoint } from "./useArchDrag.ts";

export type ArchHandleProps = {
  path: KeyPath;
  point: SidePoint;
  /** mm. */
  radius: number;
  isCurrent: boolean;
  label: string;
  onFocus: () => void;
  onRemove: () => void;
};

/** Steps forward (+x is left in the picture) and up. */
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A point to be moved: by the drawing's pointer, or with the keys while it has the focus. */
export function ArchHandle({ path, point, radius, isCurrent, label, onFocus, onRemove }: ArchHandleProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    const way = WAYS[event.key];
    if (way) {
      const { units, size } = lengthStep(workbench.getState());
      const step = (units === "in" ? size * MM_PER_INCH : size) * (event.shiftKey ? 8 : 1);
      movePoint(path, { x: point.x + way[0] * step, z: point.z + way[1] * step });
    } else if (event.key === "Delete" || event.key === "Backspace") onRemove();
    else return;
    event.preventDefault();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: there is no button element inside a drawing
    <g
      className={isCurrent ? "arch-handle arch-handle-current" : "arch-handle"}
      role="button"
      tabIndex={0}
      aria-label={label}
      onFocus={onFocus}
      onKeyDown={onKeyDown}
    >
      <circle className="arch-grip" cx={-point.x} cy={-point.z} r={4 * radius} />
      <rect x={-point.x - radius} y={-point.z - radius} width={2 * radius} height={2 * radius} />
    </g>
  );
}
