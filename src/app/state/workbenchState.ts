import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import type { PartOnSide } from "../../studies/reports/gapsAt.ts";
import type { Preferences } from "./preferences.ts";
import type { Truck } from "./truck.ts";
import type { DocumentSlice, TypedDocument } from "./typedDocument.ts";

/** From where the stage is looked at; `well` = from inside the wheel well, at one tire. */
export type ViewName = "three-quarter" | "front" | "side" | "top" | "well";

/** A file or link that could not be put on the board. */
export interface Refusal {
  readonly issues: readonly SetupIssue[];
  /** What it holds, where that is a setup at all: it can be put on the board as it is, to be mended there. */
  readonly document: TypedDocument | null;
  readonly file: string;
}

/** The document as it was when the truck shown was made of it. */
export interface GoodDocument {
  readonly documentId: string;
  readonly document: TypedDocument;
  readonly variant: string | null;
}

export interface WorkbenchState extends DocumentSlice {
  /** mm, + = bump; within the truck's range. */
  readonly travel: number;
  /** −1 … +1 of full lock, + = left turn. */
  readonly steer: number;
  readonly view: ViewName;
  /** How often a view was asked for: asking for the same one again sets the camera straight again. */
  readonly viewsAsked: number;
  /** The part pointed out in the list and on the stage. */
  readonly selection: PartOnSide | null;
  /** Names of body parts not drawn; they are measured all the same. */
  readonly hiddenParts: readonly string[];
  /** The truck is shown aligned to its targets, where it has any; false = as bolted on. */
  readonly isAligned: boolean;
  readonly preferences: Preferences;

  /** What keeps the document and variant from being shown; empty when they are. */
  readonly issues: readonly SetupIssue[];
  /** Fields of the document and variant that are empty and needed before there is an answer, in order of measuring. */
  readonly needs: readonly KeyPath[];
  /** The file or link last refused, until it is put away. */
  readonly refusal: Refusal | null;
  /** The last truck that went together: what is shown. null before there was one. */
  readonly truck: Truck | null;
  /** What `truck` was made of. */
  readonly good: GoodDocument | null;
  /** Between the begin and the end of a gesture, such as a drag: what takes long can wait. */
  readonly isGesturing: boolean;
  /** Documents as last read from or written to a file, by `documentId`. */
  readonly saved: Readonly<Record<string, TypedDocument>>;
}
