import { firstCrossing } from "../../setup/reading/firstCrossing.ts";
import type { PlateSetup } from "../../setup/types/buildTypes.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { type PlateFault, plateFaultWords, plateNotes, plateTitle } from "../wording/drawingWords.ts";
import type { FlatPattern } from "./flatPattern.ts";
import { type Corner, movedOutward } from "./kerf.ts";

/** What keeps a plate from being cut: the key below the plate and the mend. */
export interface PlateIssue {
  readonly path: readonly (string | number)[];
  readonly mend: string;
}

export type PlatePattern =
  | { readonly ok: true; readonly pattern: FlatPattern }
  | { readonly ok: false; readonly issue: PlateIssue };

/** mm. Two edges nearer than this are no two cuts. */
const TOUCHES = 1e-6;
/** mm. Arms of the cross in the middle of a hole, past its edge. */
const CROSS = 2;

/**
 * A plate to be cut, 1:1 in its own axes, seen from the side of across × up. With a kerf the lines are the way of the cutter's
 * middle, half of it outside the part and inside its holes. Contours are closed, do not cross each other and are there once.
 * @param kerf width of the cut, mm; 0 = the part as it is
 */
export function platePattern(
  plate: PlateSetup,
  material: string,
  kerf: number,
  format: LengthFormat,
): PlatePattern {
  const fault = faultOf(plate, kerf);
  if (fault !== null) return { ok: false, issue: { path: fault.path, mend: plateFaultWords(fault.kind) } };
  const outline = movedOutward(plate.outline, kerf / 2)!;
  const us = outline.map(([u]) => u);
  const vs = outline.map(([, v]) => v);
  const marks = plate.holes.flatMap(({ at: [u, v], diameter }) => {
    const arm = Math.min(CROSS, diameter / 4);
    return [
      { pen: "mark" as const, points: [u - arm, v, u + arm, v] },
      { pen: "mark" as const, points: [u, v - arm, u, v + arm] },
    ];
  });
  return {
    ok: true,
    pattern: {
      title: plateTitle(plate.name),
      notes: plateNotes(plate, material, kerf, format),
      units: format.units,
      drawn: {
        lines: [{ pen: "cut", points: outline.flat(), closed: true }, ...marks],
        circles: plate.holes.map(({ at, diameter }) => ({
          pen: "cut",
          center: at,
          radius: (diameter - kerf) / 2,
        })),
        texts: [],
      },
      bounds: [Math.min(...us), Math.min(...vs), Math.max(...us), Math.max(...vs)],
    },
  };
}

type Fault = { readonly kind: PlateFault; readonly path: readonly (string | number)[] };

function faultOf({ outline, holes }: PlateSetup, kerf: number): Fault | null {
  const moved = movedOutward(outline, kerf / 2);
  if (moved === null || firstCrossing(moved) !== null) return { kind: "kerf too wide", path: ["outline"] };
  for (const [i, { at, diameter }] of holes.entries()) {
    if (!(diameter > kerf)) return { kind: "hole too small", path: ["holes", i, "diameter"] };
    if (!(edgeDistance(outline, at) > diameter / 2 + TOUCHES))
      return { kind: "hole at the edge", path: ["holes", i, "diameter"] };
    const meets = holes.slice(0, i).some((other) => {
      const apart = Math.hypot(at[0] - other.at[0], at[1] - other.at[1]);
      return !(apart > (diameter + other.diameter) / 2 + TOUCHES);
    });
    if (meets) return { kind: "holes meet", path: ["holes", i, "diameter"] };
  }
  return null;
}

/** From a place inside an outline to its nearest edge. */
function edgeDistance(outline: readonly Corner[], [u, v]: Corner): number {
  const distances = outline.map(([u0, v0], i) => {
    const [u1, v1] = outline[(i + 1) % outline.length]!;
    const [du, dv] = [u1 - u0, v1 - v0];
    const share = Math.min(1, Math.max(0, ((u - u0) * du + (v - v0) * dv) / (du * du + dv * dv)));
    return Math.hypot(u0 + share * du - u, v0 + share * dv - v);
  });
  return Math.min(...distances);
}
