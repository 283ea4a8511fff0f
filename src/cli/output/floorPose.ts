import type { FloorPose } from "../../studies/stances/floorPose.ts";
import { clearanceTold } from "../../studies/wording/floorWords.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { degreesCell, lengthCell, pointCell, textTable } from "./textTable.ts";

/** The floor under one pose: how both wheels stand on it, then what is how far above it. */
export function floorPoseTable(floor: FloorPose, format: LengthFormat): string {
  const { roll, pitch, track, clearances, lip, frame, rollCenter } = floor;
  const { units } = format;
  const length = (mm: number) => lengthCell(mm, format);
  const row = (name: string, cell: (side: Side) => string) => [name, cell("left"), cell("right")];
  const names = [...new Set(clearances.map(({ name }) => name))];
  const clearanceOf = (name: string, side: Side) => {
    const found = clearances.find((one) => one.name === name && one.side === side);
    return found ? length(clearanceTold(found.clearance, format)) : "-";
  };
  const rows = [
    row("Camber to the floor (deg)", (side) => degreesCell(floor[side].camber)),
    row(`Contact patch X, Y, Z (${units})`, (side) => pointCell(floor[side].contactPatch, format)),
    ...(lip ? [row(`Floor to lip (${units})`, (side) => length(lip[side]))] : []),
    ...(frame ? [row(`Floor to frame (${units})`, (side) => length(frame[side]))] : []),
    ...names.map((name) => row(`Floor to ${name} (${units})`, (side) => clearanceOf(name, side))),
  ];
  const columns = [
    { header: "On the floor", align: "left" },
    { header: "Left", align: "right" },
    { header: "Right", align: "right" },
  ] as const;
  const center = rollCenter === null ? "" : `, roll center ${length(rollCenter.height)} ${units} high`;
  const whole = `Body roll ${degreesCell(roll)}°, + = left side up; pitch ${degreesCell(pitch)}°, + = nose down; track ${length(track)} ${units}${center}.`;
  return `${whole}\n${textTable(columns, rows)}`;
}
