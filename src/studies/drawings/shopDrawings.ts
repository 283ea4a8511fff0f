import type { Page } from "../../geometry/page.ts";
import { lettersWithout } from "../../geometry/winAnsi.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import { keyText } from "../../setup/types/keyPath.ts";
import type { Result, Setup, SetupIssue } from "../../setup/types/types.ts";
import { knuckleSolid, type SolidBody } from "../knuckleSolid/knuckleSolid.ts";
import {
  cutFormat,
  drawnCautions,
  NO_BUILD,
  NOTHING_TO_DRAW,
  usualBuildCaution,
} from "../wording/drawingWords.ts";
import { knuckleStem } from "../wording/fileStem.ts";
import { bareJointWords } from "../wording/loadsWords.ts";
import { drawingTitles, paperHead, paperLine } from "../wording/paperHead.ts";
import { cutListCsv } from "./cutListCsv.ts";
import { cutListPages } from "./cutListPages.ts";
import { type CutList, cutListOf } from "./cutPieces.ts";
import { drawingSheet } from "./drawingSheet.ts";
import { jigPages } from "./jigPages.ts";
import { notchPattern } from "./notchPattern.ts";
import { wrapped } from "./pageParts.ts";
import { type Named, patternFiles } from "./patternFiles.ts";
import { platePattern } from "./platePattern.ts";
import { type PaperName, type ShopFile, shopFile } from "./shopFile.ts";

/** What drawings are asked for. */
export interface DrawingAsk {
  readonly paper: PaperName;
  /** Width of the cut that plates are drawn for, mm; 0 = none counted. */
  readonly kerf: number;
  /** Where the views of the drawing sheet lie: first- or third-angle projection. */
  readonly angle: "first" | "third";
}

/** What is asked for until somebody chooses, by the setup's units. */
export function usualAsk(units: "in" | "mm"): DrawingAsk {
  return { paper: units === "in" ? "letter" : "a4", angle: "third", kerf: 0 };
}

/** All that goes to the shop floor. */
export interface ShopDrawings {
  readonly cutList: CutList;
  readonly bodies: readonly SolidBody[];
  /** Sheets in the order they are printed: drawing sheet, cut list, templates, plates. */
  readonly pages: readonly Page[];
  readonly files: readonly ShopFile[];
  /** Letters that a PDF's font neither has nor can spell, each once; a question mark stands for them in the PDFs. */
  readonly unwritten: readonly string[];
}

/**
 * Everything to build the knuckle of a setup by, the left one; the right is its mirror image. Issues where the setup has no
 * build, or a plate cannot be cut. @param file for issues
 */
export function shopDrawings(setup: Setup, ask: DrawingAsk, file: string): Result<ShopDrawings> {
  const { build, knuckle, units } = setup;
  if (build === null) return refused([{ file, key: "build", value: "", mend: NO_BUILD }]);
  const bodies = knuckleSolid(build, knuckle);
  if (bodies.length === 0) return refused([{ file, key: "build", value: "", mend: NOTHING_TO_DRAW }]);
  const format = cutFormat(units);
  const cutList = cutListOf(build, knuckle, setup.order);
  const head = paperHead(setup);
  // Lines that fit on letter paper.
  const whose = wrapped(paperLine(head), 190, 3);
  const templates = cutList.pieces.flatMap((piece) =>
    ([0, 1] as const).flatMap((which) => {
      const pattern = notchPattern(piece, which, format);
      return pattern === null
        ? []
        : [{ stem: `template ${piece.name} ${bareJointWords(piece.ends[which].joint)}`, pattern }];
    }),
  );
  const plates = platePatterns(build, ask.kerf, units, file);
  if (!plates.ok) return plates;
  const caution = usualBuildCaution(setup);
  const warned = caution === null ? [] : [caution];
  const cautions = [...warned, ...drawnCautions(null)];
  const noted = (list: readonly Named[]) =>
    list.map((one) => ({
      ...one,
      pattern: { ...one.pattern, notes: [...whose, ...warned, ...one.pattern.notes] },
    }));
  const sheet = drawingSheet(bodies, build, knuckle, { ...ask, head, format, cautions: warned });
  const listPages = cutListPages(cutList, head, ask.paper, format, cautions);
  const titles = drawingTitles(head);
  const taken = new Set<string>();
  const templateFiles = patternFiles(noted(templates), "template", titles.templates, ask.paper, taken);
  const plateFiles = patternFiles(noted(plates.value), "plate", titles.plates, ask.paper, taken);
  const drawn = { scale: sheet.scale, paper: ask.paper };
  const sheetFiles = [
    shopFile(
      "drawing.pdf",
      "drawing",
      titles.drawing,
      { format: "pdf", pages: [sheet.page], title: titles.drawing },
      drawn,
    ),
    shopFile("drawing.svg", "drawing", titles.drawing, { format: "svg", page: sheet.page }, drawn),
  ];
  const sheets = jigPages(setup, ask.paper);
  const jigFiles = [
    shopFile(
      "jig-sheet.pdf",
      "jig sheet",
      titles.jig,
      { format: "pdf", pages: sheets, title: titles.jig },
      { paper: ask.paper },
    ),
  ];
  const list: ShopFile[] = [
    shopFile(
      "cut-list.pdf",
      "cut list",
      titles.cutList,
      {
        format: "pdf",
        pages: listPages,
        title: titles.cutList,
      },
      { paper: ask.paper },
    ),
    shopFile("cut-list.csv", "cut list", titles.cutList, {
      format: "csv",
      text: cutListCsv(cutList, units),
    }),
  ];
  const stem = knuckleStem(setup, "truck");
  const pages = [sheet.page, ...listPages, ...templateFiles.pages, ...plateFiles.pages, ...sheets];
  return {
    ok: true,
    value: {
      cutList,
      bodies,
      pages,
      unwritten: unwrittenOf(pages),
      files: [
        ...sheetFiles,
        ...list,
        ...templateFiles.files,
        ...plateFiles.files,
        ...jigFiles,
        ...solidFiles(bodies, `${titles.solid}. ${paperLine(head)}`, cautions.join(" ")),
      ].map((one) => ({ ...one, file: `${stem}-${one.file}` })),
    },
  };
}

function unwrittenOf(pages: readonly Page[]): readonly string[] {
  return [...new Set(pages.flatMap(({ texts }) => texts.flatMap(({ text }) => lettersWithout(text))))];
}

function platePatterns(
  build: BuildSetup,
  kerf: number,
  units: Setup["units"],
  file: string,
): Result<Named[]> {
  const issues: SetupIssue[] = [];
  const named = build.plates.flatMap((plate, i): Named[] => {
    const made = platePattern(plate, plate.material ?? build.material, kerf, cutFormat(units));
    if (made.ok) return [{ stem: `plate ${plate.name}`, pattern: made.pattern }];
    const key = keyText(["build", "plates", i, ...made.issue.path]);
    issues.push({ file, key, value: JSON.stringify(plate.name), mend: made.issue.mend });
    return [];
  });
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: named };
}

function solidFiles(bodies: readonly SolidBody[], title: string, cautions: string): ShopFile[] {
  return (["stl", "glb", "step"] as const).map((format) =>
    shopFile(`knuckle.${format}`, "solid", title, { format, meshes: bodies, title, cautions }),
  );
}

function refused(issues: readonly SetupIssue[]): { ok: false; issues: readonly SetupIssue[] } {
  return { ok: false, issues };
}
