import { keyText } from "../../setup/types/keyPath.ts";
import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { UnusualDoubt } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { standingWords } from "../wording/answerWords.ts";

/** A truck that documents are about. */
export interface ToldTruck {
  readonly model: Model;
  /** What of it is unusual and not confirmed. */
  readonly unusual: readonly UnusualDoubt[];
}

/**
 * The document of a verb for `--json`, with what it was aligned to and with `unusual`: what of the setup is plausibly a slip
 * and not confirmed, each with what to write into `confirmed` if it is so; left out where there is nothing.
 */
export function documentText(document: object, truck: ToldTruck): string {
  return jsonText(documentOf(document, truck));
}

/** The same, not yet text. */
export function documentOf(document: object, { model, unusual }: ToldTruck): object {
  const told = unusual.map(({ confirm, text }) => ({ ...confirm, text }));
  return {
    ...withStanding(document, model.setup),
    ...(told.length > 0 ? { unusual: told } : {}),
  };
}

/**
 * A document for `--json`, and of an aligned truck what it was aligned to: `reached` false = as near as its adjusters go.
 * `fromExample` names the fields that hold an example's numbers, where there are any.
 */
function withStanding(document: object, { alignment, fromExample }: Setup): object {
  const { targets, standing } = alignment;
  const told = fromExample ? { ...document, fromExample: fromExample.fields.map(keyText) } : document;
  if (standing === undefined || targets === null) return told;
  const { stance } = targets;
  return { ...told, alignment: { shown: "aligned", stance, reached: standing.reached } };
}

/** Rows of a table for a spreadsheet, the first its header; of an aligned truck with a last column that says so. */
export function withStandingColumn(rows: readonly string[][], setup: Setup): readonly string[][] {
  if (setup.alignment.standing === undefined) return rows;
  const words = standingWords(setup) ?? "";
  return rows.map((row, i) => [...row, i === 0 ? "shown" : words]);
}

/** One JSON document, ready to print. @throws RangeError for a number JSON cannot hold, so that none turns into null. */
export function jsonText(document: unknown): string {
  const text = JSON.stringify(
    document,
    (key, value: unknown) => {
      if (typeof value === "number" && !Number.isFinite(value)) throw new RangeError(`${key} is ${value}`);
      return value;
    },
    2,
  );
  return `${text}\n`;
}

/** A point in the file's units, full precision. @param point mm */
export function pointFromMm(
  point: readonly [number, number, number],
  units: LengthUnit,
): [number, number, number] {
  return [unitsFromMm(point[0], units), unitsFromMm(point[1], units), unitsFromMm(point[2], units)];
}
