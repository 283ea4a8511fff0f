import { effectiveDocument, withoutVariants } from "../../setup/editing/effectiveDocument.ts";
import type { TruckToVary } from "../../studies/window/truckOverField.ts";
import { type WindowField, windowField } from "../../studies/window/windowField.ts";
import { parseAngle } from "../../units/angle.ts";
import { InputError } from "./inputError.ts";
import { type OptionPlace, readLength } from "./readNumbers.ts";
import type { Truck } from "./readTruck.ts";
import type { AlignedOptions } from "./sharedOptions.ts";

/** What verbs about one field over a range take. */
export interface FieldOptions extends AlignedOptions {
  readonly field: string;
  readonly from?: string;
  readonly to?: string;
}

/** The field asked about, of a truck to vary. */
export interface AskedField {
  readonly field: WindowField;
  readonly subject: TruckToVary;
  /** mm or radians; left out where not asked for. */
  readonly range: { readonly from?: number; readonly to?: number };
}

/** @throws InputError for a field there is not, and for a range that the file may not hold */
export function askedField(truck: Truck, options: FieldOptions): AskedField {
  const { model, document, file } = truck;
  const variant = options.variant ?? null;
  const shown = variant === null ? withoutVariants(document) : effectiveDocument(document, variant);
  const found = windowField(shown, model.setup, options.field, file);
  if (!found.ok) throw InputError.ofOption(file, "--field", options.field, found.issues[0]!.mend);
  const field = found.value;
  const subject = { document: shown, setup: model.setup, file, isAligned: options.aligned === true };
  return { field, subject, range: askedRange(truck, field, options) };
}

function askedRange(truck: Truck, field: WindowField, options: FieldOptions): AskedField["range"] {
  const { file } = truck;
  const read = (option: string, value: string | undefined): number | undefined =>
    value === undefined ? undefined : readMeasure(field.kind, value, truck, { file, option, value });
  const [from, to] = [read("--from", options.from), read("--to", options.to)];
  const refuse = (option: string, value: string, mend: string) => {
    throw InputError.ofOption(file, option, value, mend);
  };
  if (from !== undefined && to !== undefined && !(from < to))
    refuse("--from", options.from!, "must be less than --to; give the lesser value first");
  if (from !== undefined && (from <= field.least || from >= field.most))
    refuse("--from", options.from!, "is more or less than the file may hold there");
  if (to !== undefined && (to >= field.most || to <= field.least))
    refuse("--to", options.to!, "is more or less than the file may hold there");
  return { ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

/** A length or an angle an option holds, mm or radians. @throws InputError */
export function readMeasure(
  kind: WindowField["kind"],
  text: string,
  { model }: Truck,
  place: OptionPlace,
): number {
  if (kind === "length") return readLength(text, model.setup.units, place);
  const angle = parseAngle(text);
  if (!angle.ok) throw InputError.ofOption(place.file, place.option, text, angle.mend);
  return angle.rad;
}
