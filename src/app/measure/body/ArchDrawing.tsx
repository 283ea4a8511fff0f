import { useId, useRef } from "react";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { withMinus } from "../../../studies/wording/lengths.ts";
import { formatLength } from "../../../units/formatLength.ts";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { ArchHandle } from "./ArchHandle.tsx";
import { type ArchFrame, archFrame, pointInMm, tireCircle } from "./archGeometry.ts";
import { useArchDrag } from "./useArchDrag.ts";

export type ArchDrawingProps = {
  /** Of the list of points. */
  path: KeyPath;
  name: string;
  truck: Truck;
  current: number;
  onCurrent: (index: number) => void;
};

/**
 * A path over the tire, seen from the truck's left side with its front to the left: points are dragged, and made by
 * pressing on the line. What lies across the truck (y) stays as the table has it.
 */
export function ArchDrawing({ path, name, truck, current, onCurrent }: ArchDrawingProps) {
  const id = useId();
  const typed = useWorkbench((s) => valueAt(shownDocument(s), path));
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  const format = useWorkbench(lengthFormat);
  const travel = useWorkbench((s) => s.travel);
  const list: readonly unknown[] = Array.isArray(typed) ? typed : [];
  const points = list.flatMap((point) => {
    const at = pointInMm(point, units);
    return at ? [{ x: at[0], z: at[2] }] : [];
  });
  const drag = useArchDrag(path, points, onCurrent);
  const shown = tireCircle(truck, travel);
  const bumped = tireCircle(truck, truck.setup.travel.bump);
  // While a point is held the picture must not move under it.
  const frame = useRef<ArchFrame>(null);
  if (!drag.isDragging || frame.current === null) {
    frame.current = archFrame(points, [tireCircle(truck, truck.setup.travel.droop), bumped]);
  }
  const { u, v, width, height } = frame.current;
  if (points.length !== list.length)
    return <p className="part-note">One point cannot be read; fix it in the table.</p>;

  const text = (mm: number) => withMinus(formatLength(mm, format));
  const line = points.map(({ x, z }) => `${-x},${-z}`).join(" ");
  const radius = width / 70;
  return (
    <figure className="arch">
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing that holds what can be moved; no fieldset can be drawn in */}
      <svg
        viewBox={`${u} ${v} ${width} ${height}`}
        role="group"
        aria-label={`${name}, from the left side`}
        aria-describedby={`${id}-how`}
        {...drag.handlers}
      >
        <line className="arch-floor" x1={u} x2={u + width} y1={0} y2={0} />
        <circle className="arch-bump" cx={-bumped.x} cy={-bumped.z} r={bumped.radius} />
        <circle className="arch-tire" cx={-shown.x} cy={-shown.z} r={shown.radius} />
        <circle className="arch-tire" cx={-shown.x} cy={-shown.z} r={truck.setup.wheel.rimDiameter / 2} />
        <polyline className="arch-line" points={line} />
        <polyline className="arch-line-grip" points={line} />
        {points.map((point, i) => (
          <ArchHandle
            // biome-ignore lint/suspicious/noArrayIndexKey: a point is its place in the list
            key={i}
            path={[...path, i]}
            point={point}
            radius={radius}
            isCurrent={i === current}
            label={`Point ${i + 1} of ${points.length}: x ${text(point.x)}, z ${text(point.z)}`}
            onFocus={() => onCurrent(i)}
            onRemove={() => points.length > 1 && workbench.getState().removeItem(path, i)}
          />
        ))}
        <text className="arch-word" x={u + width * 0.02} y={v + height * 0.97} fontSize={width / 26}>
          ← front
        </text>
      </svg>
      <figcaption id={`${id}-how`}>
        Drag a point, press on the line to make one. With keys: arrows move a point, Delete removes it.
        Dashed: the tire at full bump.
      </figcaption>
    </figure>
  );
}
