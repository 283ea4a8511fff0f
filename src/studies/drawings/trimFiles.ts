import type { Page } from "../../geometry/page.ts";
import type { Model } from "../model/model.ts";
import type { TrimRegion } from "../trim/trimTypes.ts";
import { cutFormat } from "../wording/drawingWords.ts";
import { trimFilesTitle } from "../wording/trimWords.ts";
import type { PaperName } from "./paper.ts";
import { patternFiles } from "./patternFiles.ts";
import type { ShopFile } from "./shopFile.ts";
import { trimPattern } from "./trimPattern.ts";

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
