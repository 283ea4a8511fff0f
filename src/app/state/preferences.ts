import type { LengthFormat } from "../../units/formatLength.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import type { LengthStep } from "../../units/stepLength.ts";

/** How lengths are shown and stepped: `file` = in the file's units, inches to the sixteenth. No data changes with it. */
export type LengthDisplay = "file" | "1/16" | "1/32" | "1/64" | "decimal" | "mm";

export type Theme = "auto" | "light" | "dark";

/** How the stage draws: `truck` = rubber, metal and sheet; `lines` = flat fills and ink, as a drawing on paper. */
export type PictureStyle = "truck" | "lines";

/** What a person likes to see; kept in the browser, no part of any setup. */
export interface Preferences {
  readonly lengths: LengthDisplay;
  readonly theme: Theme;
  readonly picture: PictureStyle;
}

export const DEFAULT_PREFERENCES: Preferences = { lengths: "file", theme: "auto", picture: "truck" };

const LENGTH_DISPLAYS: readonly string[] = [
  "file",
  "1/16",
  "1/32",
  "1/64",
  "decimal",
  "mm",
] satisfies LengthDisplay[];
const THEMES: readonly string[] = ["auto", "light", "dark"] satisfies Theme[];
const PICTURES: readonly string[] = ["truck", "lines"] satisfies PictureStyle[];

interface Display {
  readonly format: LengthFormat;
  readonly step: LengthStep;
}

const DISPLAYS: Readonly<Record<Exclude<LengthDisplay, "file">, Display>> = {
  "1/16": { format: { units: "in", fraction: 16 }, step: { units: "in", size: 1 / 16 } },
  "1/32": { format: { units: "in", fraction: 32 }, step: { units: "in", size: 1 / 32 } },
  "1/64": { format: { units: "in", fraction: 64 }, step: { units: "in", size: 1 / 64 } },
  decimal: { format: { units: "in", fraction: "decimal" }, step: { units: "in", size: 0.01 } },
  mm: { format: { units: "mm" }, step: { units: "mm", size: 1 } },
};

function displayOf(lengths: LengthDisplay, fileUnits: FileUnits): Display {
  if (lengths !== "file") return DISPLAYS[lengths];
  return DISPLAYS[fileUnits === "mm" ? "mm" : "1/16"];
}

/** How to write lengths for a person; the very same object for the same display. */
export function lengthFormatOf(lengths: LengthDisplay, fileUnits: FileUnits): LengthFormat {
  return displayOf(lengths, fileUnits).format;
}

/** How far one step of a length goes; the very same object for the same display. */
export function lengthStepOf(lengths: LengthDisplay, fileUnits: FileUnits): LengthStep {
  return displayOf(lengths, fileUnits).step;
}

/** Preferences from storage, which may hold anything. */
export function readPreferences(stored: unknown): Preferences {
  const { lengths, theme, picture } = (typeof stored === "object" && stored !== null ? stored : {}) as Record<
    string,
    unknown
  >;
  return {
    lengths: LENGTH_DISPLAYS.includes(lengths as string)
      ? (lengths as LengthDisplay)
      : DEFAULT_PREFERENCES.lengths,
    theme: THEMES.includes(theme as string) ? (theme as Theme) : DEFAULT_PREFERENCES.theme,
    picture: PICTURES.includes(picture as string) ? (picture as PictureStyle) : DEFAULT_PREFERENCES.picture,
  };
}
