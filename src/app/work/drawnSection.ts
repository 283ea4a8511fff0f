import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Model } from "../../studies/model/model.ts";
import { envelopeSection } from "../../studies/section/envelopeSection.ts";
import type { Outline } from "../../studies/section/outline.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { hatchLines } from "./hatchLines.ts";
import type { DrawnSection, SectionCut } from "./sectionMessages.ts";

/** mm between lines, and their way: what is cut of the truck leans to the right, tire and rim to the left. */
const HATCH = {
  part: { spacing: 12, angle: Math.PI / 4 },
  ring: { spacing: 20, angle: -Math.PI / 4 },
} as const;

/** Cuts the truck at a pose, and its envelopes, ready to be drawn. */
export function drawnSectionOf(
  model: Model,
  envelopes: readonly { readonly side: Side; readonly mesh: TriangleMesh }[],
  { plane, travel, steer }: SectionCut,
): DrawnSection {
  const pose = solvePose(model.frontEnd, travel, steer);
  const none = (["left", "right"] as const).map((side) => ({ side, mesh: NO_MESH }));
  const section = envelopeSection(
    model,
    envelopes.length > 0 ? envelopes : none,
    plane,
    pose.ok ? pose : null,
  );
  return {
    plane,
    figures: section.figures.map(({ kind, name, outlines }) => ({
      kind,
      name,
      outline: outlines.map(outlinePath).join(""),
      hatch:
        kind === "envelope" ? "" : segmentsPath(hatchLines(outlines, HATCH[kind].spacing, HATCH[kind].angle)),
    })),
    nearest: section.clearances[0] ?? null,
  };
}

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
