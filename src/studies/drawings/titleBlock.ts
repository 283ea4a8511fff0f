import type { PageText } from "../../geometry/page.ts";
import { DRAWING_NOTES, projectionWords, titleLines } from "../wording/drawingWords.ts";
import { type Drawn, LEADING, line, NOTHING, paragraph, scaleBar, together } from "./pageParts.ts";
import { MARGIN, type PaperName, type PaperSize } from "./shopFile.ts";

/** mm. Height of the strip along the foot of a drawing sheet. */
export const STRIP = 34;
/** mm. Room of the projection's symbol and its words. */
const SYMBOL = 30;

export interface TitleFacts {
  readonly title: string;
  /** Under the title: whose it is, for which truck. */
  readonly lines: readonly string[];
  readonly scale: string;
  readonly paper: PaperName;
  readonly angle: "first" | "third";
  readonly units: "in" | "mm";
  readonly cautions: readonly string[];
}

/** Frame, title, scale, symbol of the projection, cautions and bar of a drawing sheet. */
export function titleBlock(facts: TitleFacts, size: PaperSize): Drawn {
  const right = size.width - MARGIN;
  const [left, low, top] = [MARGIN, MARGIN, MARGIN + STRIP];
  const titleAt = right - SYMBOL - (size.width < 250 ? 56 : 84);
  const [title, ...rest] = titleLines(facts);
  const large = titled(title!, right - SYMBOL - titleAt - 4);
  const frame = [left, low, right, low, right, size.height - MARGIN, left, size.height - MARGIN];
  const notes = [...DRAWING_NOTES, ...facts.cautions].flatMap((text) =>
    wrapped(text, titleAt - left - 4, NOTE),
  );
  return together(
    {
      lines: [
        { pen: "frame", points: frame, closed: true },
        line("frame", left, top, right, top),
        line("frame", titleAt, low, titleAt, top),
        line("frame", right - SYMBOL, low, right - SYMBOL, top),
      ],
      circles: [],
      texts: [
        ...large.map(({ text, size, down }) => ({
          at: [titleAt + 3, top - down] as const,
          size,
          text,
          bold: true,
        })),
        ...told(rest, titleAt + 3, top, right - SYMBOL - titleAt - 4, large.at(-1)!.down),
        ...paragraph(notes, left + 2, top - 1, NOTE),
        {
          at: [right - SYMBOL / 2, low + 3] as const,
          size: 2.8,
          text: projectionWords(facts.angle),
          anchor: "middle" as const,
        },
      ],
    },
    projectionSymbol(facts.angle, right - SYMBOL / 2, low + STRIP / 2 + 3),
    // A bar that tells whether a print is 1:1 would mislead on any other scale.
    facts.scale === "1:1" ? scaleBar(facts.units, left + 2, low + 1.5) : NOTHING,
  );
}

/** A title on two lines of its room, or on three of smaller letters; `down` from the top of the strip, mm. */
function titled(title: string, width: number) {
  const large = wrapped(title, width, 4);
  if (large.length <= 2) return large.map((text, i) => ({ text, size: 4, down: 6 + 5 * i }));
  return wrapped(title, width, 2.6)
    .slice(0, 3)
    .map((text, i) => ({ text, size: 2.6, down: 4 + 3.3 * i }));
}

/** What stands under the title, in the largest letters with which it all fits. @param down mm from the top of the strip to the title */
function told(
  texts: readonly string[],
  x: number,
  top: number,
  width: number,
  down: number,
): readonly PageText[] {
  const room = STRIP - down - 2;
  const sizes = [3, 2.6, 2.3, 2, 1.7];
  const tries = sizes.map((size) => ({ size, lines: texts.flatMap((text) => wrapped(text, width, size)) }));
  const { size, lines } = tries.find((one) => one.lines.length * one.size * LEADING <= room) ?? tries.at(-1)!;
  return paragraph(lines, x, top - down - 1, size);
}

/** mm. Letters of the notes. */
const NOTE = 2.3;
/** Of letters, in sizes, on the wide side. */
const LETTER = 0.5;

/** Words on lines no longer than a width. */
function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && (last.length + word.length + 1) * size * LETTER <= width)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/**
 * A cut-off cone and its two circles: the view of its small end, which is on the left, lies on the right in first-angle projection
 * and on the left in third-angle projection (ISO 5456-2, from memory).
 */
function projectionSymbol(angle: "first" | "third", x: number, y: number): Drawn {
  const [small, large, long] = [2.5, 5, 10];
  const way = angle === "third" ? -1 : 1;
  const [cone, circles] = [x - way * 7, x + way * 7];
  return {
    ...NOTHING,
    lines: [
      {
        pen: "outline",
        points: [
          cone - long / 2,
          y - small,
          cone + long / 2,
          y - large,
          cone + long / 2,
          y + large,
          cone - long / 2,
          y + small,
        ],
        closed: true,
      },
      line("center", cone - long / 2 - 2, y, cone + long / 2 + 2, y),
      line("center", circles - large - 1.5, y, circles + large + 1.5, y),
      line("center", circles, y - large - 1.5, circles, y + large + 1.5),
    ],
    circles: [small, large].map((radius) => ({
      pen: "outline" as const,
      center: [circles, y] as const,
      radius,
    })),
  };
}
