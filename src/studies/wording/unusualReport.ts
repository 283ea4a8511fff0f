import { type KeyPath, keyText } from "../../setup/types/keyPath.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { UnusualDoubt } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { confirmationOf } from "../plausibility/unusual.ts";
import { unusualIn } from "../plausibility/unusualIn.ts";
import { readingsBehind } from "../worksheet/readingsBehind.ts";
import { unusualSubject, unusualText } from "./unusualWords.ts";

/** What is unusual of a truck and not confirmed, as doubts. */
export function unusualDoubts(model: Model, format: LengthFormat): readonly UnusualDoubt[] {
  return unusualIn(model).open.map((one) => ({
    kind: "unusual",
    path: one.paths[0],
    also: one.paths.slice(1),
    readings: readingsBehind(model.setup, one.paths).map(placeOfReading),
    text: unusualText(one, model, format),
    confirm: confirmationOf(one, model.setup.units),
  }));
}

/** Where the number of a reading stands in the file; of several numbers, the reading. */
function placeOfReading(reading: Reading): KeyPath {
  return ["readings", reading.index, ...("is" in reading ? ["is"] : [])];
}

/** The same as lines for a terminal: where, what, and how to say that it is so. @param file the file as the user named it */
export function unusualLines(file: string, doubts: readonly UnusualDoubt[]): readonly string[] {
  return doubts.map(
    ({ path, text, confirm }) =>
      `${file}: unusual: ${keyText(path)}: ${text} If it is right, add to "confirmed": ${JSON.stringify(confirm)}`,
  );
}

/** What is unusual and was said to be so, in a few words each, with its entry in the setup's `confirmed`. */
export function confirmedNotes(
  model: Model,
  format: LengthFormat,
): readonly { readonly text: string; readonly entry: number }[] {
  return unusualIn(model).confirmed.map(({ unusual, entry }) => ({
    text: `${unusualSubject(unusual, model.setup, format).replace(/,$/, "")}: unusual, and confirmed.`,
    entry,
  }));
}
