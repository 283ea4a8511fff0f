import { mirrorY, type Vec3 } from "../../geometry/vec.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { SectionBends } from "../envelope/sectionBends.ts";
import { SectionField } from "../envelope/sectionField.ts";
import { SweptDistance } from "../envelope/sweptDistance.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { rangesToCheck } from "../reports/check.ts";
import { ALL_POSES, type SideRange } from "../search/sideRange.ts";
import { type Outline, outlineArea } from "../section/outline.ts";
import { placedBody } from "../section/placedBody.ts";
import { boxFaces, clippedToRect } from "./boxFaces.ts";
import { contourOf } from "./contour.ts";
import { apartArcs, arcOutline, type CutArc, cutArcs } from "./cutArcs.ts";
import type { FlatSheet } from "./flatSheet.ts";
import { leftOf } from "./leftOf.ts";
import { lipSheet } from "./lipSheet.ts";
import { poseTable } from "./poseTable.ts";
import type { Trim, TrimRegion } from "./trimTypes.ts";

/** mm. Cells that lines are read from, and how much more is taken than the allowance asks: distances and lines are found to less. */
const CELL = 2;
export const TRIM_MORE = 0.5;

/** mm. How far the ring moves from a pose of the table to the next; gains not searched for; steps and reach of the section's table. */
const SPACING = 15;
const WORTH = 0.05;
const SECTION_STEP = 0.5;
const SECTION_REACH = 250;
const LEAST_BEND = 1;

/** mm. How far beyond the edge of a sheet lines are looked for, so that they cross it. */
const OVER = 6;

/** mm. Of a lip, less is left. */
const HAIR = 0.4;

/** mm². Less is a hair, not a piece of metal. */
const LEAST_AREA = 1;

/** mm. A line nearer than this to the end of what was looked at ends there. */
const AT_END = 0.1;

/** Of a budget a quarter is for the limits. */
const LIMITS_PART = 4;

/** Microseconds, about, of a distance for each hundred poses. */
const LOOK_WORK = 30;

export interface TrimOptions {
  /** mm taken beside what the allowance asks. Default `TRIM_MORE`. */
  readonly more?: number;
  readonly budget?: Budget;
}

/**
 * What of a body part tire and rim come nearer to than the allowance, over the poses that a check counts: on the panel above a path,
 * as a sheet through it, or on the faces of a box. A path keeps its radius: what is left is taken to be rolled again. Distances
 * are those of the swept ring, found between the poses of a table; half a millimeter more is taken than they ask.
 * @returns null where the part is a mesh, which is no sheet, where there is none of that name, or once the budget is spent
 */
export function trimOf(
  model: Model,
  name: string,
  { budget = Budget.endless(), more = TRIM_MORE }: TrimOptions = {},
): Trim | null {
  const index = model.setup.truck.body.findIndex((one) => one.name === name);
  const part = model.setup.truck.body[index];
  if (part === undefined || part.kind === "mesh") return null;
  const { ranges } = rangesToCheck(model, ALL_POSES, budget.share(LIMITS_PART));
  const sides = (["left", "right"] as const).filter((side) => part.side === "both" || part.side === side);
  const own = model.mirrored && part.side === "both" ? (["left"] as const) : sides;
  const found: Found[] = [];
  for (const side of own) {
    const swept = sweptOf(model, ranges[side]);
    if (swept === null) continue;
    for (const sheet of sheetsOf(part, side)) {
      const region = regionOn(sheet, swept, model.setup.allowance + more, budget);
      if (region === null) return null;
      if (region.outlines.length > 0) found.push({ sheet, side, ...region });
    }
  }
  const regions = found.map((one) => told(part, one)).sort((a, b) => b.area - a.area);
  const [first] = found;
  // A part of both sides is one path of the setup: cut otherwise on each it would have to be two.
  const path =
    first === undefined || found.length > 1 ? null : leftOf(part, first.side, first.sheet, first.arcs);
  const left = path === null ? null : { part: path, index };
  return { part: name, regions, left };
}

/** A region with its sheet. */
interface Found {
  readonly side: Side;
  readonly sheet: FlatSheet;
  readonly outlines: readonly Outline[];
  readonly arcs: readonly CutArc[];
  readonly depth: number;
}

/** Distance from a place in a side's left-hand frame to what the ring sweeps, mm. */
type Swept = (at: Float64Array) => number;

function sweptOf(model: Model, range: SideRange): { readonly at: Swept; readonly poses: number } | null {
  const { ring } = model;
  const table = poseTable(range, ring.ballRadius, SPACING);
  if (table === null) return null;
  const field = new SectionField(ring, SECTION_STEP, SECTION_REACH);
  const swept = new SweptDistance(table, field, new SectionBends(field, LEAST_BEND), ring.ballRadius, WORTH);
  const poses = table.rows * table.columns;
  const list = Int32Array.from({ length: poses }, (_, i) => i);
  return {
    poses,
    at: ([x, y, z]) => {
      swept.look(x!, y!, z!, list, 0, poses);
      return swept.found[0]!;
    },
  };
}

function sheetsOf(part: BodyPart, side: Side): readonly FlatSheet[] {
  const [placed] = placedBody([part], side);
  if (placed === undefined || part.kind === "mesh") return [];
  const here = placed.part;
  const inFrame = (at: Vec3): Vec3 => (side === "left" ? at : mirrorY(at));
  if (here.kind === "path") {
    const points = here.points.map(inFrame);
    const sheet = lipSheet(points, here.radius);
    return sheet === null ? [] : [sheet];
  }
  if (here.kind === "mesh") return [];
  const [a, b] = [inFrame(here.min), inFrame(here.max)];
  const of = (pick: (...values: number[]) => number): Vec3 => [
    pick(a[0], b[0]),
    pick(a[1], b[1]),
    pick(a[2], b[2]),
  ];
  return boxFaces(of(Math.min), of(Math.max));
}

function regionOn(
  sheet: FlatSheet,
  { at, poses }: { readonly at: Swept; readonly poses: number },
  keeps: number,
  budget: Budget,
): Pick<Found, "outlines" | "arcs" | "depth"> | null {
  const level = keeps + sheet.radius;
  const place = new Float64Array(3);
  let isSpent = false;
  let deepest = 0;
  const value = (u: number, v: number, far: number): number => {
    const off = sheet.edgeDistance(u, v) - OVER;
    if (off > far) return off;
    sheet.placeTo(place, u, v);
    isSpent ||= budget.isSpent((LOOK_WORK * poses) / 100);
    const near = at(place) - level;
    if (sheet.edgeDistance(u, v) < 0) deepest = Math.max(deepest, -near);
    return Math.max(off, near);
  };
  const isFace = sheet.kind === "face";
  const beyond = isFace ? OVER : 0;
  const grid = {
    low: [sheet.low[0] - beyond, sheet.low[1] - OVER],
    high: [sheet.high[0] + beyond, sheet.high[1] + beyond],
    cell: CELL,
  } as const;
  const lines = contourOf(value, grid, TRIM_MORE, () => isSpent);
  if (lines === null) return null;
  const closed = lines.filter((line) => line.closed && Math.abs(outlineArea(line)) >= LEAST_AREA);
  if (isFace) {
    const outlines = closed
      .flatMap((line) => clippedToRect(line, sheet.low, sheet.high) ?? [])
      .filter((line) => Math.abs(outlineArea(line)) >= LEAST_AREA);
    return { outlines, arcs: [], depth: outlines.length === 0 ? 0 : deepest };
  }
  const cuts = closed.map((line) => ({ line, arcs: cutArcs(line, sheet) }));
  const holes = cuts.flatMap(({ line, arcs }) => (arcs === "hole" ? [line] : []));
  // A hair no deeper than what is taken besides keeps the allowance as it is.
  const arcs = apartArcs(cuts.flatMap((cut) => (cut.arcs === "hole" ? [] : cut.arcs))).filter(
    ({ depth }) => depth > HAIR,
  );
  return {
    outlines: [...arcs.map((arc) => arcOutline(arc, sheet)), ...holes],
    arcs,
    depth: Math.max(0, ...arcs.map(({ depth }) => depth), ...holes.map((hole) => farthestIn(hole, sheet))),
  };
}

function farthestIn({ points }: Outline, { edgeDistance }: FlatSheet): number {
  let most = 0;
  for (let i = 0; i < points.length; i += 2) most = Math.max(most, -edgeDistance(points[i]!, points[i + 1]!));
  return most;
}

function told(part: BodyPart, { side, sheet, outlines, depth }: Found): TrimRegion {
  const place = new Float64Array(3);
  // Seen from outside, the right side is the mirror image of its left-hand frame.
  const shown = (points: Float64Array) =>
    side === "left" ? points : points.map((value, i) => (i % 2 === 0 ? -value : value));
  const places = outlines.map(({ points }) => {
    const out = new Float64Array((points.length / 2) * 3);
    for (let i = 0; i < points.length / 2; i++) {
      sheet.placeTo(place, points[2 * i]!, points[2 * i + 1]!);
      out.set([place[0]!, side === "left" ? place[1]! : -place[1]!, place[2]!], 3 * i);
    }
    return out;
  });
  const { edge, low, high } = sheet;
  const us = edge.points.filter((_, i) => i % 2 === 0);
  const [first, last] = [Math.min(...us), Math.max(...us)];
  const all = outlines.flatMap(({ points }) =>
    Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i]!, points[2 * i + 1]!] as const),
  );
  return {
    part: part.name,
    side,
    kind: sheet.kind,
    outlines: outlines.map(({ points, closed }) => ({ points: shown(points), closed })),
    places,
    edge: { ...edge, points: shown(edge.points) },
    axleAt: axleOn(sheet, side),
    area: Math.abs(outlines.reduce((sum, line) => sum + outlineArea(line), 0)),
    depth,
    off: sheet.off,
    goesBeyond: sheet.kind === "lip" && all.some(([u]) => u < first - CELL || u > last + CELL),
    isCutOff:
      sheet.kind === "lip" &&
      all.some(([u, v]) => u < low[0] + AT_END || u > high[0] - AT_END || v > high[1] - AT_END),
  };
}

/** Where the edge crosses the axle line, on the sheet as it is shown. */
function axleOn({ edge: { points, closed }, placeTo }: FlatSheet, side: Side): number | null {
  const place = new Float64Array(3);
  const at = (i: number) => {
    const [u, v] = [points[2 * i]!, points[2 * i + 1]!];
    placeTo(place, u, v);
    return { u, x: place[0]! };
  };
  const count = points.length / 2;
  for (let i = 0; i + (closed ? 0 : 1) < count; i++) {
    const [a, b] = [at(i), at((i + 1) % count)];
    if (a.x === b.x || a.x < 0 === b.x < 0) continue;
    const u = a.u + (a.x / (a.x - b.x)) * (b.u - a.u);
    return side === "left" ? u : -u;
  }
  return null;
}
