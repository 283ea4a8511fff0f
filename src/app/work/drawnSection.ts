import { hatchLines } from "../../geometry/hatchLines.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Model } from "../../studies/model/model.ts";
import type { Budget } from "../../studies/numeric/budget.ts";
import {
  envelopeSection,
  type SectionClearance,
  type SectionFigure,
} from "../../studies/section/envelopeSection.ts";
import type { Outline, SectionPlane } from "../../studies/section/outline.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { DrawnSide } from "./drawnEnvelope.ts";

export interface SectionCut {
  readonly plane: SectionPlane;
  readonly travel: number;
  readonly steer: number;
}

/** One thing cut, as SVG paths in sheet coordinates (see `sheetAxes`), mm. */
export interface DrawnFigure {
  readonly kind: SectionFigure["kind"];
  readonly name: string;
  readonly outline: string;
  readonly hatch: string;
}

export interface DrawnSection {
  readonly plane: SectionPlane;
  readonly figures: readonly DrawnFigure[];
  /** The part nearest to the envelope in the plane; null where there is none. */
  readonly nearest: SectionClearance | null;
}

/** mm between lines, and their way: what is cut of the truck leans to the right, tire and rim to the left. */
const HATCH = {
  part: { spacing: 12, angle: Math.PI / 4 },
  ring: { spacing: 20, angle: -Math.PI / 4 },
} as const;

/** Cuts the truck at a pose, and its envelopes, ready to be drawn. @param budget once it is spent, parts are left out */
export function drawnSectionOf(
  model: Model,
  swept: readonly DrawnSide[],
  { plane, travel, steer }: SectionCut,
  budget: Budget,
): DrawnSection {
  const pose = solvePose(model.frontEnd, travel, steer);
  const envelopes = SIDES.map((side) => {
    const drawn = swept.find((one) => one.side === side);
    return {
      side,
      mesh: drawn ? { positions: Float64Array.from(drawn.positions), triangles: drawn.triangles } : NO_MESH,
    };
  });
  const section = envelopeSection(model, envelopes, plane, pose.ok ? pose : null, budget);
  return {
    plane,
    figures: section.figures.map(({ kind, name, outlines }) => ({
      kind,
      name,
      outline: outlines.map(outlinePath).join(""),
      hatch:
        kind === "envelope"
          ? ""
          : segmentsPath(hatchLines(closedOf(outlines), HATCH[kind].spacing, HATCH[kind].angle)),
    })),
    nearest: section.clearances[0] ?? null,
  };
}

const closedOf = (outlines: readonly Outline[]) =>
  outlines.filter(({ closed }) => closed).map(({ points }) => points);

const SIDES = ["left", "right"] as const;
const NO_MESH: TriangleMesh = { positions: new Float64Array(0), triangles: new Uint32Array(0) };

function outlinePath({ points, closed }: Outline): string {
  const places: string[] = [];
  for (let i = 0; i < points.length; i += 2)
    places.push(`${points[i]!.toFixed(2)} ${points[i + 1]!.toFixed(2)}`);
  return `M${places.join("L")}${closed ? "Z" : ""}`;
}

function segmentsPath(lines: readonly number[]): string {
  let path = "";
  for (let i = 0; i < lines.length; i += 4) {
    const [a, b, c, d] = [0, 1, 2, 3].map((k) => lines[i + k]!.toFixed(1));
    path += `M${a} ${b}L${c} ${d}`;
  }
  return path;
}
