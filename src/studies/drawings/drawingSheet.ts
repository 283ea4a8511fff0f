import type { Page } from "../../geometry/page.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { SolidBody } from "../knuckleSolid/knuckleSolid.ts";
import { drawnCautions, scaleWords } from "../wording/drawingWords.ts";
import { drawingTitles, type PaperHead, paperLines } from "../wording/paperHead.ts";
import type { DrawnView } from "./drawnView.ts";
import { outsideView } from "./outsideViews.ts";
import { movedBy, pageOf, together } from "./pageParts.ts";
import { pinSection } from "./pinSection.ts";
import { type PlacedView, placedView } from "./placedView.ts";
import { lyingPaper, MARGIN, PAPERS, type PaperName, type PaperSize } from "./shopFile.ts";
import { STRIP, titleBlock } from "./titleBlock.ts";

/** Scales to choose from, knuckle for paper: ISO 5455 in millimeters, the shop's halves in inches (common practice, no source). */
const SCALES = { mm: [1, 2, 5, 10, 20, 50], in: [1, 2, 4, 8, 16, 32] } as const;

/** mm of paper between views. */
const GAP = 8;

/** A drawing sheet with the scale it turned out to have, and where each view's zero lies on it. */
export interface DrawingSheet {
  readonly page: Page;
  /** `1:4`. */
  readonly scale: string;
  readonly zeros: Readonly<Record<ViewKey, readonly [x: number, y: number]>>;
  /** Of each view about its zero: for what lies beside what. */
  readonly views: Readonly<Record<ViewKey, PlacedView>>;
  /** Paper for knuckle, of the three views from outside. */
  readonly ratio: number;
}

type ViewKey = DrawnView["name"];

export interface SheetAsk {
  readonly head: PaperHead;
  readonly paper: PaperName;
  readonly angle: "first" | "third";
  readonly format: LengthFormat;
  /** Said before what every drawing says. */
  readonly cautions?: readonly string[];
}

/**
 * The left knuckle on one sheet: from the front, from outboard, from above, and cut along the pin; at the largest of the usual scales
 * that fits the paper, upright or lying. In third-angle projection the view from outboard lies to the right of the front view and
 * the one from above over it, in first-angle projection to the left and below.
 */
export function drawingSheet(
  bodies: readonly SolidBody[],
  build: BuildSetup,
  knuckle: KnuckleSetup,
  { head, paper, angle, format, cautions = [] }: SheetAsk,
): DrawingSheet {
  const outside = {
    front: outsideView("front", bodies, knuckle, format),
    side: outsideView("side", bodies, knuckle, format),
    top: outsideView("top", bodies, knuckle, format),
  };
  const sizes = [lyingPaper(paper), PAPERS[paper]];
  const scales = SCALES[format.units];
  const section = (per: number, said: string) =>
    placedView(pinSection(bodies, build, knuckle, format, 1 / per), 1 / per, said);
  const at = (per: number, size: PaperSize) => {
    const views = {
      front: placedView(outside.front, 1 / per),
      side: placedView(outside.side, 1 / per),
      top: placedView(outside.top, 1 / per),
      section: section(per, ""),
    };
    return { views, size, per, layout: layoutOf(views, size, angle) };
  };
  const tries = scales.flatMap((per) => sizes.map((size) => at(per, size)));
  const { size, per, ...usual } = tries.find((one) => one.layout.fits) ?? tries.at(-1)!;
  // What is left beside the other views may hold a larger section.
  const larger = scales
    .filter((one) => one < per)
    .map((one) => ({ ...usual.views, section: section(one, scaleWords(one)) }))
    .map((views) => ({ views, layout: layoutOf(views, size, angle) }))
    .find(({ layout }) => layout.fits);
  const { views, layout } = larger ?? usual;
  const scale = scaleWords(per);
  const placed = (Object.keys(views) as ViewKey[]).map((name) =>
    movedBy(views[name].drawn, ...layout.zeros[name]),
  );
  const said = [...cautions, ...drawnCautions(scale)];
  const title = drawingTitles(head).drawing;
  const facts = { title, lines: paperLines(head), scale, paper, angle, units: format.units, cautions: said };
  const page = pageOf(title, size, together(titleBlock(facts, size), ...placed));
  return { page, scale, zeros: layout.zeros, views, ratio: 1 / per };
}

/** Zeros of the views on the sheet, what room is left shared out between them. */
function layoutOf(
  { front, side, top, section }: Record<ViewKey, PlacedView>,
  { width, height }: PaperSize,
  angle: "first" | "third",
): { readonly zeros: Record<ViewKey, readonly [number, number]>; readonly fits: boolean } {
  const room = { width: width - 2 * MARGIN - 2 * GAP, height: height - 2 * MARGIN - STRIP - 2 * GAP };
  // The column that front view and view from above share, and the row of front and side view.
  const column = {
    left: Math.max(front.reach.left, top.reach.left),
    right: Math.max(front.reach.right, top.reach.right),
  };
  const row = {
    below: Math.max(front.reach.below, side.reach.below),
    above: Math.max(front.reach.above, side.reach.above),
  };
  const wide = (view: PlacedView) => view.reach.left + view.reach.right;
  const high = (view: PlacedView) => view.reach.below + view.reach.above;
  const other = { width: Math.max(wide(side), wide(section)), height: Math.max(high(top), high(section)) };
  const spare = {
    x: room.width - GAP - column.left - column.right - other.width,
    y: room.height - GAP - row.below - row.above - other.height,
  };
  const [x0, y0] = [MARGIN + GAP, MARGIN + STRIP + GAP];
  const isThird = angle === "third";
  const share = { x: Math.max(0, spare.x) / 3, y: Math.max(0, spare.y) / 3 };
  // Left edges of the columns and lower edges of the rows.
  const main = {
    x: isThird ? x0 + share.x : x0 + 2 * share.x + other.width + GAP,
    y: isThird ? y0 + share.y : y0 + 2 * share.y + other.height + GAP,
  };
  const beside = {
    x: isThird ? main.x + column.left + column.right + GAP + share.x : x0 + share.x,
    y: isThird ? main.y + row.below + row.above + GAP + share.y : y0 + share.y,
  };
  const frontAt = [main.x + column.left, main.y + row.below] as const;
  const middle = (view: PlacedView) => ({
    x: beside.x + (other.width - wide(view)) / 2 + view.reach.left,
    y: beside.y + (other.height - high(view)) / 2 + view.reach.below,
  });
  return {
    zeros: {
      front: frontAt,
      side: [middle(side).x, frontAt[1]],
      top: [frontAt[0], middle(top).y],
      section: [middle(section).x, middle(section).y],
    },
    fits: spare.x >= 0 && spare.y >= 0,
  };
}
