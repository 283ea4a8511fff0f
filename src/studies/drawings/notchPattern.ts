import type { PageText } from "../../geometry/page.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { quarterWords, templateNotes, templateTitle } from "../wording/pieceWords.ts";
import type { CutPiece } from "./cutPieces.ts";
import type { FlatPattern } from "./flatPattern.ts";
import { line } from "./pageParts.ts";

/** mm. Height of the paper above the deepest place of the notch: room to write on and to hold it by. */
const BAND = 28;
const LETTERS = 3;
/** mm. Lines nearer than this on the whole way round are one line. */
const SAME = 0.05;

/**
 * The template of one end, to be wrapped round the outside with its print outward, its two ends meeting on the mark line and the
 * member's other end up: cut along the lower edge, which counts the wall; the dashed line is where the outside of the wall
 * itself meets. null = the end is cut square. @param which 0 = its first end
 */
export function notchPattern(piece: CutPiece, which: 0 | 1, format: LengthFormat): FlatPattern | null {
  const end = piece.ends[which];
  if (end.fittedTo.length === 0) return null;
  const round = Math.PI * piece.diameter;
  const wraps = end.through.length;
  const x = (i: number) => (round * i) / wraps;
  const along = (cuts: Float64Array) =>
    Array.from({ length: wraps + 1 }, (_, i) => [x(i), cuts[i % wraps]!] as const);
  const top = Math.max(...end.outside, ...end.through) + BAND;
  const low = Math.min(...end.outside, ...end.through);
  const isApart = end.outside.some((from, i) => Math.abs(from - end.through[i]!) > SAME);
  const contour = [...along(end.through).flat(), round, top, 0, top];
  const quarters = [1, 2, 3].map((i) =>
    line("mark", x((i * wraps) / 4), end.through[(i * wraps) / 4]!, x((i * wraps) / 4), top),
  );
  const texts: PageText[] = [0, 1, 2, 3].map((i) => ({
    at: [x((i * wraps) / 4) + 1.5, top - BAND + 3] as const,
    size: LETTERS,
    text: quarterWords(i),
    turn: Math.PI / 2,
  }));
  return {
    title: templateTitle(piece.name, end.joint),
    notes: templateNotes(piece, which, format),
    units: format.units,
    drawn: {
      lines: [
        { pen: "cut", points: contour, closed: true },
        ...(isApart ? [{ pen: "hidden" as const, points: along(end.outside).flat() }] : []),
        ...quarters,
      ],
      circles: [],
      texts: texts.map((text) => ({ ...text, at: [text.at[0] + LETTERS, text.at[1]] as const })),
    },
    bounds: [0, low, round, top],
  };
}
