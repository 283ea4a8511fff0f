import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { LengthUnit, SetupIssue } from "../../setup/types/types.ts";
import type { PartOnSide } from "../../studies/reports/gapsAt.ts";
import type { GivenMeshes } from "./givenMeshes.ts";
import type { LengthDisplay, PictureStyle, Preferences, Theme } from "./preferences.ts";
import type { Suggestion } from "./suggestion.ts";
import type { DocumentSlice, TypedDocument } from "./typedDocument.ts";
import type { ViewName, WorkbenchState } from "./workbenchState.ts";

/** How a document comes back to the board. */
export interface OpenedDocument {
  readonly documentId?: string;
  readonly document: TypedDocument;
  readonly file: string;
  readonly meshes?: GivenMeshes;
  readonly variant?: string | null;
  readonly drafts?: DocumentSlice["drafts"];
  readonly travel?: number;
  readonly steer?: number;
  readonly hiddenParts?: readonly string[];
  readonly isAligned?: boolean;
  /** Whether it stands so in a file of the person's. */
  readonly isSaved?: boolean;
}

export interface OpeningActions {
  /**
   * Opens a setup with the mesh files given with it, as a step that can be undone. One that cannot be shown is refused:
   * the truck stays, and `refusal` says why.
   */
  openText(text: string, file: string, meshes?: GivenMeshes): void;
  /**
   * Adds mesh files, or newer ones of the same name, to the setup on the board or to the one refused last. Those that no
   * part asks for become parts, as one step; where they stand is to be given.
   */
  addMeshes(meshes: GivenMeshes): void;
  /** Puts a document on the board as it is, sound or not, as a step that can be undone. */
  openDocument(opened: OpenedDocument): void;
  /** Begins a truck with every number empty, as a step that can be undone. */
  newTruck(units: LengthUnit): void;
  /** Puts the setup refused last on the board as it is, to be mended there. */
  openRefused(): void;
  /** Refuses a file that could not even be read as text; the truck stays. */
  refuse(issue: SetupIssue): void;
  dismissRefusal(): void;
  /** Notes that the document stands in a file just so. */
  markSaved(document: TypedDocument, file: string): void;
}

/** Where an edit goes: to the variant shown, if there is one, or to the setup below all variants. */
export type EditScope = "shown" | "base";

export interface DocumentActions {
  /**
   * Puts a value as typed into a field: `["knuckle", "hubFace"]`, "5 5/8 + 1/8". Text is in the units shown, a number in
   * the file's. What the field cannot hold is kept as a draft with its mend, and the document stays as it is.
   */
  editField(path: KeyPath, typed: unknown, scope?: EditScope): void;
  /** Takes a field out, so that its default holds; its draft too. */
  removeField(path: KeyPath, scope?: EditScope): void;
  /** Moves a field by whole steps: a length by the fraction shown, an angle by a tenth of a degree. */
  stepField(path: KeyPath, direction: 1 | -1, count?: number, scope?: EditScope): void;
  /** Forgets the text that a field could not hold; the document's value shows again. */
  discardDraft(path: KeyPath, scope?: EditScope): void;
  /** Says of numbers that an example came with that they are the truck's own: measured, and right as they stand. */
  claimFields(paths: readonly KeyPath[]): void;
  /** Writes what a suggestion offers. */
  applySuggestion(suggestion: Suggestion): void;
}

export interface ListActions {
  /** Puts an item into a list (body parts, points, stances) before position `index`; past its end = at its end. */
  insertItem(path: KeyPath, index: number, item: unknown, scope?: EditScope): void;
  /** Moves an item so that it then stands at `to`. */
  moveItem(path: KeyPath, from: number, to: number, scope?: EditScope): void;
  removeItem(path: KeyPath, index: number, scope?: EditScope): void;
  /** Gives a body part another name wherever it has it: in the setup and in every variant. */
  renamePart(from: string, to: string): void;
}

export interface VariantActions {
  /** Shows a variant, to which edits go from then on; null = the setup as it stands. One that has issues may be chosen. */
  chooseVariant(variant: string | null): void;
  /**
   * Makes a variant of what is shown, with further values as the file holds them, and shows it.
   * @returns its name: the one given, with a number where that is taken
   */
  duplicateAsVariant(
    name: string,
    values?: readonly { readonly path: KeyPath; readonly value: unknown }[],
  ): string;
  /** @returns null, or why the name cannot be (one sentence without a full stop); then nothing changes */
  renameVariant(from: string, to: string): string | null;
  removeVariant(name: string): void;
}

export interface ViewActions {
  setTravel(mm: number): void;
  setSteer(share: number): void;
  setPose(mm: number, share: number): void;
  setView(view: ViewName): void;
  /** Selecting what is already selected lets go of it. */
  select(part: PartOnSide | null): void;
  /** Draws a body part no longer, or again. It is measured all the same. */
  setHidden(part: string, isHidden: boolean): void;
  /** Shows the truck aligned to its setup's targets, or as bolted on. */
  setAligned(isAligned: boolean): void;
  setLengths(lengths: LengthDisplay): void;
  setTheme(theme: Theme): void;
  setPicture(picture: PictureStyle): void;
  setPreferences(preferences: Preferences): void;
}

export interface HistoryActions {
  /** Takes back the last step: an edit, a gesture, an opening. Nothing when there is none. */
  undo(): void;
  redo(): void;
  /** Takes many steps at once. @param count below 0 = back */
  stepBy(count: number): void;
  /** Puts another state of the setup on the board, as one step. */
  putDocument(document: TypedDocument): void;
  /** What is edited from here to `endGesture` is one step. Typing in one field is a gesture, and so is a drag. */
  beginGesture(): void;
  /**
   * Goes on with the gesture that ended last, as the same step, if nothing else has been done since; else begins one. So
   * typing can pause, with the gesture ended, and still be one step.
   */
  resumeGesture(): void;
  endGesture(): void;
  /** Ends the gesture and puts everything back to where it began (Escape). */
  cancelGesture(): void;
}

interface WorkbenchActions
  extends OpeningActions,
    DocumentActions,
    ListActions,
    VariantActions,
    ViewActions,
    HistoryActions {}

/** All that the page's store holds. */
export type Workbench = WorkbenchState & WorkbenchActions;

/** What actions are made with. */
export interface ActionContext {
  readonly set: (change: Partial<WorkbenchState> | ((state: Workbench) => Partial<WorkbenchState>)) => void;
  readonly get: () => Workbench;
}
