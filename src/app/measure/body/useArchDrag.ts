import type { PointerEvent } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { valueAt } from "../../../setup/types/keyPath.ts";
import { useHeldDrag } from "../../parts/useHeldDrag.ts";
import { lengthStep, shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { workbench } from "../../state/workbench.ts";
import { between } from "../points/between.ts";
import { movedPoint, nearestOnLine, nearestPoint, type SidePoint, sidePoint } from "./archGeometry.ts";

/** CSS pixels within which a press takes a point, or else the line. */
const REACH = { mouse: { point: 16, line: 12 }, touch: { point: 24, line: 16 } } as const;

/** Takes hold of a point, or of the line to make one there, and moves it: one step to undo; Escape puts it back. */
export function useArchDrag(path: KeyPath, points: readonly SidePoint[], onTake: (index: number) => void) {
  const { held, isDragging, begin, take, stop } = useHeldDrag<{
    readonly pointer: number;
    readonly index: number;
  }>();

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    const svg = event.currentTarget;
    const at = placeIn(svg, event);
    const mmPerPixel = 1 / (svg.getScreenCTM()?.a ?? 1);
    const state = workbench.getState();
    const reach = REACH[event.pointerType === "touch" ? "touch" : "mouse"];
    let index = nearestPoint(points, at, reach.point * mmPerPixel);
    const onLine = index === null ? nearestOnLine(points, at, reach.line * mmPerPixel) : null;
    if (index === null && onLine === null) return;
    event.preventDefault();
    svg.setPointerCapture(event.pointerId);
    begin();
    if (onLine) {
      const document = shownDocument(state);
      const [a, b] = [onLine.after, onLine.after + 1].map(
        (i) => valueAt(document, [...path, i]) as unknown[],
      );
      index = onLine.after + 1;
      state.insertItem(path, index, between(a!, b!, onLine.share, fileUnitsOf(document)));
    }
    take({ pointer: event.pointerId, index: index! });
    onTake(index!);
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    if (held.current?.pointer !== event.pointerId) return;
    movePoint([...path, held.current.index], placeIn(event.currentTarget, event));
  };
  return {
    isDragging,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp: () => stop("end"),
      onPointerCancel: () => stop("cancel"),
    },
  };
}

/** Puts a point of the setup elsewhere in the side view. */
export function movePoint(path: KeyPath, to: SidePoint): void {
  const state = workbench.getState();
  const document = shownDocument(state);
  const moved = movedPoint(valueAt(document, path), to, lengthStep(state), fileUnitsOf(document));
  state.editField(path, moved);
}

function placeIn(svg: SVGSVGElement, { clientX, clientY }: { clientX: number; clientY: number }): SidePoint {
  const place = new DOMPoint(clientX, clientY).matrixTransform(svg.getScreenCTM()?.inverse());
  return sidePoint(place.x, place.y);
}
