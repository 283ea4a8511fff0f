import { removeAt, setAt } from "../../setup/reading/setAt.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import { degFromRad } from "../../units/angle.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import type { OrderedField, OrderedValue } from "./orderedFields.ts";

/**
 * A copy of a setup document in which the blocks say what the order says; what they say alike stays as typed. The same
 * document where nothing differs. Take the copy of a document with its variant applied to a variant with `editShown`.
 */
export function writeOrder(document: unknown, fields: readonly OrderedField[], units: FileUnits): unknown {
  let written = document;
  for (const { path, ordered, agrees } of fields) {
    if (agrees) continue;
    written = setAt(written, path, typedValue(ordered, units));
    // A wheel's mounting face is given in one way.
    if (path[1] === "backspacing") written = removeAt(written, ["wheel", "offset"]);
    if (path[0] === "wheel" && path[1] === "offset") written = removeAt(written, ["wheel", "backspacing"]);
  }
  return written;
}

/** A value as the file has it: plain numbers where they say it, else text such as `5 3/8`. */
function typedValue(value: OrderedValue, units: FileUnits): unknown {
  const length = (mm: number): string | number => {
    const text = plainLengthText(mm, units);
    return String(Number(text)) === text ? Number(text) : text;
  };
  switch (value.kind) {
    case "length":
      return length(value.mm);
    case "angle":
      return Number(degFromRad(value.rad).toFixed(9));
    case "point":
      return value.point.map(length);
    case "word":
      return value.word;
  }
}

/** An order to begin with: this truck's own knuckle as the base and as ordered, its wheel, rotor and caliper as typed. */
export function newOrder(document: unknown): object {
  const knuckle = (valueAt(document, ["knuckle"]) ?? {}) as Readonly<Record<string, unknown>>;
  const { center: _, ...wheel } = (valueAt(document, ["wheel"]) ?? {}) as Readonly<Record<string, unknown>>;
  const { diameter, thickness } = (valueAt(document, ["hardware", "rotor"]) ?? {}) as Readonly<
    Record<string, unknown>
  >;
  const brake = {
    ...(diameter === undefined ? {} : { rotorDiameter: diameter }),
    ...(thickness === undefined ? {} : { rotorThickness: thickness }),
  };
  return { base: knuckle, drop: 0, hubFace: knuckle.hubFace, brake, wheel };
}
