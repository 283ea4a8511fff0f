import type { DrawnContents } from "../../geometry/drawnFile.ts";

/** Paper sizes, mm, upright: ISO 216 (A4, A3); ASME Y14.1 (A and B), from memory: letter is 8 1/2 × 11 in, tabloid twice that. */
export const PAPERS = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
  tabloid: { width: 279.4, height: 431.8 },
  a3: { width: 297, height: 420 },
} as const;

export type PaperName = keyof typeof PAPERS;

export const PAPER_NAMES = Object.keys(PAPERS) as readonly PaperName[];

/** mm. What printers leave white at the edge of a sheet, and a little more. */
export const MARGIN = 10;

export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** A sheet on its long side. */
export function lyingPaper(name: PaperName): PaperSize {
  const { width, height } = PAPERS[name];
  return { width: height, height: width };
}

export type DrawingKind =
  | "drawing"
  | "jig sheet"
  | "cut list"
  | "template"
  | "plate"
  | "trim template"
  | "solid";

/** A drawing as it would be saved. */
export interface ShopFile {
  /** With its ending, unique without regard to case. */
  readonly file: string;
  readonly kind: DrawingKind;
  readonly title: string;
  /** Paper to drawn: `1:2`; null = a list or a solid. */
  readonly scale: string | null;
  /** null = no sheet of a kind: as large as what is on it, or no drawing. */
  readonly paper: PaperName | null;
  readonly contents: DrawnContents;
}

export function shopFile(
  file: string,
  kind: DrawingKind,
  title: string,
  contents: DrawnContents,
  { scale = null, paper = null }: { readonly scale?: string | null; readonly paper?: PaperName | null } = {},
): ShopFile {
  return { file, kind, title, scale, paper, contents };
}
