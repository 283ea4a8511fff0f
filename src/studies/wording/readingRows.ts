import { bareTyped, lengthAt } from "../../setup/reading/typedPair.ts";
import { isWithin, type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { worksheetOf } from "../../setup/worksheet/worksheetState.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { amountText, angleText, lengthText } from "./lengths.ts";
import { readingText } from "./readingsTold.ts";
import { lineWords } from "./worksheetWords.ts";

/** A reading on paper. */
export interface ReadingRow {
  /** Its place in the file; names the row. */
  readonly key: string;
  readonly name: string;
  readonly value: string;
  /** How well it is known; "" = it does not say. */
  readonly within: string;
}

/** What stands over the column of `within`. */
export const WITHIN_HEAD = "Good to about";

/** Under a list of readings. */
export const WITHIN_NOTE =
  "Good to about: two readings in three are off by less than that. Where no ± was typed it is what such a reading is usually good to.";

/** Over the list of what is assumed, on paper. */
export const ASSUMED_ON_PAPER =
  "No reading tells these in full. What is not read is an invented layout, moved to go with what was read, and not this truck: measure it before anything is cut or welded.";

/**
 * Everything that was read of a truck, in the order of the worksheet, fields of the setup that stand on it too.
 * @param document what the setup was made of, its variant's patch applied
 */
export function readingRows(setup: Setup, document: unknown, format: LengthFormat): readonly ReadingRow[] {
  return worksheetOf(document).flatMap((state): readonly ReadingRow[] => {
    if (!state.isRead) return [];
    const { path } = state;
    const row = { key: keyText(path), name: lineWords(state).name };
    if (path[0] !== "readings") {
      const known = setup.within.find((one) => isWithin(one.path, path));
      const within = known ? amount(isAngle(path), known.within, format) : "";
      return [{ ...row, value: fieldText(path, document, setup.units, format), within }];
    }
    const reading = setup.readings.find(({ index }) => index === path[1]);
    if (!reading) return [{ ...row, value: "left out", within: "" }];
    const value = "is" in reading ? readingText(reading, reading.is, format) : "read";
    return [{ ...row, value, within: amount(reading.kind === "angle", reading.within, format) }];
  });
}

function fieldText(path: KeyPath, document: unknown, units: LengthUnit, format: LengthFormat): string {
  const typed = String(bareTyped(valueAt(document, path)) ?? "");
  if (isAngle(path)) return `${typed.replace(/\s*(?:°|deg)$/, "")}°`;
  const mm = lengthAt(document, path, units);
  return mm === null ? typed : lengthText(mm, format);
}

/** Half of what a tape's marks are apart is still told. */
function amount(isAngle: boolean, within: number, format: LengthFormat): string {
  if (isAngle) return angleText(within);
  const isTape = format.units === "in" && format.fraction !== "decimal";
  return amountText(within, isTape ? { units: "in", fraction: 64 } : format);
}

function isAngle(path: KeyPath): boolean {
  return path.at(-1) === "pinAngle";
}
