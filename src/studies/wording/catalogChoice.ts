import type { CatalogItem } from "../../setup/catalogs/readCatalog.ts";
import type { OrderedBrake, OrderedHub, OrderedJoint } from "../../setup/types/orderTypes.ts";
import { boltPatternText } from "../../units/boltPattern.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { taperText } from "../../units/taper.ts";
import { sizeText } from "./orderTexts.ts";

type Orderable = CatalogItem<OrderedJoint | OrderedBrake | OrderedHub>;

/** A part of a catalog by name and what tells it from the others: `Plover 41 · taper 1.5 in/ft · stud 1 3/4 in`. */
export function catalogChoice(item: Orderable, format: LengthFormat): string {
  return [item.name, catalogFacts(item, format)].filter((words) => words !== "").join(" · ");
}

/** What tells a part of a catalog from the others: `taper 1.5 in/ft · stud 1 3/4 in`; "" = the catalog says nothing of it. */
export function catalogFacts({ part }: Orderable, format: LengthFormat): string {
  const told = (word: string, mm: number | null) => (mm === null ? null : `${word} ${sizeText(mm, format)}`);
  const pattern = "boltPattern" in part && part.boltPattern ? boltPatternText(part.boltPattern) : null;
  const facts =
    "taper" in part
      ? [
          part.taper === null ? null : `taper ${taperText(part.taper)}`,
          told("stud", part.studLength),
          told("housing", part.housingDiameter),
        ]
      : "rotorDiameter" in part
        ? [told("rotor", part.rotorDiameter), pattern, told("rims from", part.leastRim)]
        : [
            pattern,
            told("inner bearing", part.innerBearing.bore),
            told("outer bearing", part.outerBearing.bore),
          ];
  return facts.filter((fact) => fact !== null).join(" · ");
}
