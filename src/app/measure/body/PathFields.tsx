import { useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import type { Truck } from "../../state/truck.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { PointList } from "../points/PointList.tsx";
import { ArchDrawing } from "./ArchDrawing.tsx";

export type PathFieldsProps = {
  path: KeyPath;
  name: string;
  truck: Truck;
};

/** A line through points: its radius, the side view to lay it out in, and its points as numbers. */
export function PathFields({ path, name, truck }: PathFieldsProps) {
  const [current, setCurrent] = useState(0);
  const points = [...path, "points"];
  return (
    <>
      <FieldRow path={[...path, "radius"]} label="Radius of the line" />
      <ArchDrawing path={points} name={name} truck={truck} current={current} onCurrent={setCurrent} />
      <PointList
        path={points}
        caption={`Points of ${name}`}
        least={1}
        current={current}
        onCurrent={setCurrent}
      />
    </>
  );
}
