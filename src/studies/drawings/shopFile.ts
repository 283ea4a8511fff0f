import type { DrawnContents } from "../../geometry/drawnFile.ts";
import type { PaperName } from "./paper.ts";

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
