import { block, list } from "../fields/blockFields.ts";
import { textField } from "../fields/fields.ts";
import { catalogHead } from "./catalogHead.ts";

const strength = (what: string) => textField(`${what} with its unit, such as 75 ksi or 517 MPa`);

/** A catalog of materials, as typed: the one source of its JSON Schema and checks. */
export const MATERIALS_DOCUMENT = block("a catalog of materials that a build may name", {
  ...catalogHead("materials"),
  about: textField("what holds for all of it", 1000).optional(),
  items: list(
    "the materials",
    block("one material", {
      name: textField("what a build calls it, unique in the catalog"),
      yield: strength("yield strength"),
      ultimate: strength("ultimate tensile strength"),
      source: textField("where the values are published"),
    }),
  ),
});
