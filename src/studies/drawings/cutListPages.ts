import { type Page, textWidth } from "../../geometry/page.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { CUT_LIST_NOTES, cutListTitle, cutRemarks, cutRows } from "../wording/pieceWords.ts";
import type { CutList } from "./cutPieces.ts";
import { line, NOTHING, pageOf, paragraph, together, wrapped } from "./pageParts.ts";
import { lyingPaper, MARGIN, type PaperName } from "./shopFile.ts";

// mm.
const TITLE = 5;
const SIZE = 3;
const ROW = 6;
const GAP = 4;

/** The cut list on sheets of a paper, on its long side: a row a piece. */
export function cutListPages(
  list: CutList,
  heading: string,
  paper: PaperName,
  format: LengthFormat,
  cautions: readonly string[],
): Page[] {
  const size = lyingPaper(paper);
  const { header, rows } = cutRows(list, format);
  const foot = [...CUT_LIST_NOTES, ...cutRemarks(list, format), ...cautions].flatMap((text) =>
    wrapped(text, size.width - 2 * MARGIN, SIZE),
  );
  const footHeight = foot.length * SIZE * 1.35;
  const first = size.height - MARGIN - TITLE - 2 * ROW;
  const perPage = Math.max(1, Math.floor((first - MARGIN - footHeight) / ROW));
  const count = Math.max(1, Math.ceil(rows.length / perPage));
  const xs = columnPlaces([header, ...rows], size.width - 2 * MARGIN);
  return Array.from({ length: count }, (_, i) => {
    const own = rows.slice(i * perPage, (i + 1) * perPage);
    const title = cutListTitle(heading, i + 1, count);
    const cells = [header, ...own].flatMap((row, r) =>
      row.map((text, c) => ({
        at: [MARGIN + xs.places[c]!, first - r * ROW] as const,
        size: SIZE * xs.shrink,
        text,
        bold: r === 0,
      })),
    );
    const rules = own.map((_, r) => {
      const y = first - r * ROW - 2;
      return line("dimension", MARGIN, y, size.width - MARGIN, y);
    });
    const drawn = together(
      {
        lines: rules,
        circles: [],
        texts: [
          { at: [MARGIN, size.height - MARGIN - TITLE] as const, size: TITLE, text: title, bold: true },
          ...cells,
        ],
      },
      { ...NOTHING, texts: paragraph(foot, MARGIN, MARGIN + footHeight, SIZE) },
    );
    return pageOf(title, size, drawn);
  });
}

/** Where columns begin so that no cell meets the next; letters are made smaller where the sheet is too narrow. */
function columnPlaces(rows: readonly (readonly string[])[], width: number) {
  const widths = rows[0]!.map(
    (_, c) => Math.max(...rows.map((row, r) => textWidth(row[c]!, SIZE) * (r === 0 ? 1.08 : 1))) + GAP,
  );
  const total = widths.reduce((sum, one) => sum + one, 0);
  const shrink = Math.min(1, width / total);
  let at = 0;
  const places = widths.map((one) => {
    const place = at;
    at += one * shrink;
    return place;
  });
  return { places, shrink };
}
