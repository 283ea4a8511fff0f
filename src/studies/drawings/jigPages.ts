import type { Page, PageText, Pen } from "../../geometry/page.ts";
import type { Sketch, SketchLook } from "../../geometry/sketch.ts";
import type { Setup } from "../../setup/types/types.ts";
import { asBuiltRead, asBuiltSides } from "../jig/asBuiltReport.ts";
import { type JigSheet, jigSheetOf } from "../jig/jigSheet.ts";
import { jigSketches } from "../jig/jigSketch.ts";
import { failText, JIG_CAUTIONS } from "../wording/asBuiltWords.ts";
import {
  JIG_COLUMNS,
  jigCells,
  jigFormat,
  jigReadText,
  jigSetupSentences,
  jigSketchWords,
  readingWords,
} from "../wording/jigWords.ts";
import { jigTitle, type PaperHead, paperHead, paperLine } from "../wording/paperHead.ts";
import { type Drawn, LEADING, line, NOTHING, pageOf, paragraph, together, wrapped } from "./pageParts.ts";
import { MARGIN, PAPERS, type PaperName, type PaperSize } from "./shopFile.ts";

// mm.
const TITLE = 5;
const SIZE = 2.9;
const SMALL = 2.3;
/** Of the columns with numbers, from the right edge: must read, tolerance, left, right. */
const COLUMNS = [112, 88, 52, 26] as const;

/** Where the columns to write into begin, from the right edge. */
const WRITTEN = [59, 29] as const;

const PENS: Readonly<Record<SketchLook, Pen>> = {
  part: "outline",
  edge: "outline",
  datum: "center",
  tape: "mark",
  thin: "dimension",
  off: "hidden",
};

const SIDES = ["left", "right"] as const;

/** The jig sheet on paper: the jig drawn for either hand, then what to do and what must be read, with room to write. */
export function jigPages(setup: Setup, paper: PaperName): Page[] {
  const sheet = jigSheetOf(setup);
  const head = paperHead(setup);
  return [drawnPage(sheet, setup, head, paper), tablePage(sheet, setup, head, paper)];
}

function drawnPage(sheet: JigSheet, setup: Setup, head: PaperHead, paper: PaperName): Page {
  const size = PAPERS[paper];
  const format = jigFormat({ units: setup.units });
  const wide = (size.width - 2 * MARGIN) / 2;
  const { title, drawn: over, top } = headed(head, size);
  const views = SIDES.flatMap((side, row) => {
    const say = jigSketchWords(sheet, side, format);
    const { fromFront, fromAbove } = jigSketches(sheet, side, say);
    return [fromFront, fromAbove].map((sketch, column) => {
      const scale = wide / sketch.width;
      const [x, y] = [MARGIN + column * wide, top - row * (sketch.height * scale + 12)];
      const title = column === 0 ? say.fromFront : say.fromAbove;
      return together(sketchDrawn(sketch, scale, x, y - 6), {
        ...NOTHING,
        texts: [{ at: [x, y - SIZE], size: SIZE, text: title, bold: true }],
      });
    });
  });
  return pageOf(title, size, together(over, ...views));
}

/** @param x, top of its upper left corner, mm of the paper */
function sketchDrawn({ shapes }: Sketch, scale: number, x: number, top: number): Drawn {
  const place = ([px, py]: readonly [number, number]): [number, number] => [x + scale * px, top - scale * py];
  return {
    lines: shapes.flatMap((shape) =>
      shape.kind === "line" ? [{ pen: PENS[shape.look], points: shape.points.flatMap(place) }] : [],
    ),
    circles: shapes.flatMap((shape) =>
      shape.kind === "ring"
        ? [{ pen: PENS[shape.look], center: place(shape.at), radius: scale * shape.radius }]
        : [],
    ),
    texts: shapes.flatMap((shape) =>
      shape.kind === "text"
        ? [
            {
              at: place(shape.at),
              size: 12 * scale,
              text: shape.text,
              anchor: shape.anchor,
              bold: shape.isRead,
            },
          ]
        : [],
    ),
  };
}

function tablePage(sheet: JigSheet, setup: Setup, head: PaperHead, paper: PaperName): Page {
  const size = PAPERS[paper];
  const format = jigFormat({ units: setup.units });
  const right = size.width - MARGIN;
  const { title, drawn: over, top: under } = headed(head, size);
  const steps = jigSetupSentences(sheet, format).flatMap((text) => wrapped(text, right - MARGIN, SIZE));
  let y = under;
  const texts: PageText[] = paragraph(steps, MARGIN, y, SIZE);
  y -= steps.length * SIZE * LEADING + 5;
  const lines = [];
  const top = y;
  const sides = asBuiltSides(setup);
  const numbers = (cells: readonly string[], bold: boolean, under = 0, size = SIZE): PageText[] =>
    cells.map((text, i) => ({
      at: [right - COLUMNS[i]! + 20, y - SIZE - under],
      size,
      text,
      anchor: "end",
      bold,
    }));
  texts.push(...numbers([...JIG_COLUMNS, "Left", "Right"], false));
  y -= SIZE * LEADING + 1.5;
  for (const row of sheet.rows) {
    const { key } = row;
    lines.push(line("dimension", MARGIN, y, right, y));
    y -= 1;
    const { name, how } = readingWords(key, sheet, format);
    const told = wrapped(how, right - COLUMNS[0] - 4 - MARGIN, SMALL);
    const read = SIDES.map((side) => {
      const is = asBuiltRead(setup, side, key);
      return is === null ? "" : jigReadText(row, is, format);
    });
    const failing = SIDES.map((side) =>
      failText(
        sides?.[side]?.passes.find((one) => one.key === key),
        format,
      ),
    );
    texts.push(
      { at: [MARGIN, y - SIZE], size: SIZE, text: name, bold: true },
      ...paragraph(told, MARGIN, y - SIZE * LEADING, SMALL),
      ...numbers([...jigCells(row, format), ...read], true),
      ...numbers(["", "", ...failing], true, SIZE * LEADING, SMALL).filter(({ text }) => text !== ""),
    );
    y -= SIZE * LEADING + told.length * SMALL * LEADING + 1;
  }
  lines.push(line("dimension", MARGIN, y, right, y));
  for (const x of WRITTEN) lines.push(line("dimension", right - x, top, right - x, y));
  const cautions = wrapped(JIG_CAUTIONS.replaceAll("\n", " ").trim(), right - MARGIN, SIZE);
  texts.push(...paragraph(cautions, MARGIN, y - 3, SIZE));
  return pageOf(title, size, together(over, { ...NOTHING, lines, texts }));
}

/** Title and whose the part is; `top` is where the rest of the page begins. */
function headed(head: PaperHead, { width, height }: PaperSize) {
  const title = jigTitle(head.part);
  const whose = wrapped(paperLine(head), width - 2 * MARGIN, SIZE);
  const at = height - MARGIN - TITLE;
  const drawn: Drawn = {
    ...NOTHING,
    texts: [
      { at: [MARGIN, at], size: TITLE, text: title, bold: true },
      ...paragraph(whose, MARGIN, at - 2, SIZE),
    ],
  };
  return { title, drawn, top: at - 4 - whose.length * SIZE * LEADING };
}
