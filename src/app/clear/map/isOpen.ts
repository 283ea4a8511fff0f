import type { ClearanceMap } from "../../../studies/map/clearanceMap.ts";

/** Whether a cell of the map is in reach and has no gap because the budget was spent first. @param gap of each cell, mm */
export function isOpen(map: ClearanceMap, gap: Float64Array, cell: number): boolean {
  return map.cutShort === true && map.reach.status[cell] === 0 && Number.isNaN(gap[cell]);
}
