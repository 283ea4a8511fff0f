import { type Page, textWidth } from "../../geometry/page.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { cutListTitle, type PaperHead, paperLine } from "../wording/paperHead.ts";
import { CUT_LIST_NOTES, cutRemarks, cutRows } from "../wording/pieceWords.ts";
import type { CutList } from "./cutPieces.ts";
import { LEADING, line, NOTHING, pageOf, paragraph, together, wrapped } from "./pageParts.ts";
import { lyingPaper, MARGIN, type PaperName } from "./shopFile.ts";

// mm.
const TITLE = 5;
const SIZE = 3;
const ROW = 6;
const GAP = 4;
/** From the line a title stands on down to the top of what is under it. */
const UNDER = 2;

/** mm. From the line that a row stands on down to the rule under it. */
const RULE = 2;

/**
 * The cut list on sheets of a paper, on its long side: a row a piece. What is to be known of the pieces stands under the rows
 * of each sheet; where it would leave the rows less than half of one, on sheets of its own behind them. The cautions are on all.
 */
export function cutListPages(
  list: CutList,
  head: PaperHead,
  paper: PaperName,
  format: LengthFormat,
  cautions: readonly string[],
): Page[] {
  const size = lyingPaper(paper);
  const { header, rows } = cutRows(list, format);
  const linesOf = (texts: readonly string[]) =>
    texts.flatMap((text) => wrapped(text, size.width - 2 * MARGIN, SIZE));
  const notes = linesOf([...CUT_LIST_NOTES, ...cutRemarks(list, format)]);
  const foot = linesOf(cautions);
  const whose = linesOf([paperLine(head)]);
  const first = size.height - MARGIN - TITLE - 2 * ROW - heightOf(whose.slice(1));
  const room = first - MARGIN;
  const isBeside = heightOf([...notes, ...foot]) <= room / 2;
  const under = isBeside ? [...notes, ...foot] : foot;
  const perPage = Math.max(1, Math.floor((room - RULE - heightOf(under)) / ROW));
  const perNotes = Math.max(1, Math.floor((room - heightOf(foot)) / heightOf([""])) - 1);
  const xs = columnPlaces([header, ...rows], size.width - 2 * MARGIN);
  const tables = piecesOf(rows, perPage).map((own) =>
    together(
      {
        lines: own.map((_, r) => {
          const y = first - r * ROW - RULE;
          return line("dimension", MARGIN, y, size.width - MARGIN, y);
        }),
        circles: [],
        texts: [header, ...own].flatMap((row, r) =>
          row.map((text, c) => ({
            at: [MARGIN + xs.places[c]!, first - r * ROW] as const,
            size: SIZE * xs.shrink,
            text,
            bold: r === 0,
          })),
        ),
      },
      { ...NOTHING, texts: paragraph(under, MARGIN, MARGIN + heightOf(under), SIZE) },
    ),
  );
  const noted = isBeside ? [] : piecesOf(notes, perNotes);
  const behind = noted.map((own) => ({
    ...NOTHING,
    texts: [
      ...paragraph(own, MARGIN, first + SIZE, SIZE),
      ...paragraph(foot, MARGIN, MARGIN + heightOf(foot), SIZE),
    ],
  }));
  const sheets = [...tables, ...behind];
  return sheets.map((drawn, i) => {
    const title = cutListTitle(head.part, i + 1, sheets.length);
    const top = size.height - MARGIN - TITLE;
    const texts = [
      { at: [MARGIN, top] as const, size: TITLE, text: title, bold: true },
      ...paragraph(whose, MARGIN, top - UNDER, SIZE),
    ];
    return pageOf(title, size, { ...drawn, texts: [...texts, ...drawn.texts] });
  });
}

/** mm that lines of text take up. */
function heightOf(lines: readonly string[]): number {
  return lines.length * SIZE * LEADING;
}

/** A list in pieces of so many each; one without any where it is empty. */
function piecesOf<T>(list: readonly T[], each: number): (readonly T[])[] {
  const count = Math.max(1, Math.ceil(list.length / each));
  return Array.from({ length: count }, (_, i) => list.slice(i * each, (i + 1) * each));
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
