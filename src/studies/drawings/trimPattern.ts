import type { Page, PageLine } from "../../geometry/page.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { TrimRegion } from "../trim/trimTypes.ts";
import { cutFormat } from "../wording/drawingWords.ts";
import { AXLE_LINE, trimFilesTitle, trimNotes, trimTitle } from "../wording/trimWords.ts";
import { clipped } from "./clipped.ts";
import type { FlatPattern } from "./flatPattern.ts";
import { line } from "./pageParts.ts";
import { patternFiles } from "./patternFiles.ts";
import type { PaperName, ShopFile } from "./shopFile.ts";

/** mm. How much of the panel is drawn about what goes, and letters. */
const ABOUT = 30;
const LETTERS = 3;

/** What of a panel is cut away, 1:1, laid flat as seen from outside the truck. Contours are closed. */
function trimPattern(
  region: TrimRegion,
  allowance: number,
  isMirrored: boolean,
  format: LengthFormat,
): FlatPattern {
  const us = region.outlines.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 0));
  const vs = region.outlines.flatMap(({ points }) => [...points].filter((_, i) => i % 2 === 1));
  const bounds = [
    Math.min(...us) - ABOUT,
    Math.min(...vs) - ABOUT,
    Math.max(...us) + ABOUT,
    Math.max(...vs) + ABOUT,
  ] as const;
  const cuts = region.outlines.map(({ points }): PageLine => ({ pen: "cut", points, closed: true }));
  const { axleAt, edge } = region;
  const isShown = axleAt !== null && axleAt > bounds[0] && axleAt < bounds[2];
  const beside = clipped(
    {
      lines: [
        { pen: "hidden", points: edge.points, closed: edge.closed },
        ...(isShown ? [line("center", axleAt, bounds[1], axleAt, bounds[3])] : []),
      ],
      circles: [],
      texts: isShown ? [{ at: [axleAt + 2, bounds[3] - 5], size: LETTERS, text: AXLE_LINE }] : [],
    },
    bounds,
  );
  return {
    title: trimTitle(region),
    notes: trimNotes(region, allowance, isMirrored, format),
    units: format.units,
    drawn: { ...beside, lines: [...cuts, ...beside.lines] },
    bounds,
  };
}

/** Templates that a panel is trimmed by, 1:1: each as SVG and DXF, all as PDF on sheets of the paper with the bar. */
export function trimFiles(
  regions: readonly TrimRegion[],
  { setup, mirrored }: Pick<Model, "setup" | "mirrored">,
  paper: PaperName,
  heading: string,
): { readonly files: readonly ShopFile[]; readonly pages: readonly Page[] } {
  const named = regions.map((region) => {
    const of = setup.truck.body.find(({ name }) => name === region.part);
    const isMirrored = mirrored && of?.side === "both";
    const pattern = trimPattern(region, setup.allowance, isMirrored, cutFormat(setup.units));
    return { stem: `trim ${region.part} ${region.side}`, pattern };
  });
  return patternFiles(named, "trim template", trimFilesTitle(heading), paper, new Set());
}
