import ballJoints from "../../../../shared/catalogs/ball-joints.json?raw";
import brakes from "../../../../shared/catalogs/brakes.json?raw";
import hubs from "../../../../shared/catalogs/hubs.json?raw";
import materials from "../../../../shared/catalogs/materials.json?raw";
import tubes from "../../../../shared/catalogs/tubes.json?raw";
import { type Catalogs, NO_CATALOGS, readCatalog } from "../../../setup/catalogs/readCatalog.ts";

/** The catalogs that come with the program. */
export const SHIPPED: Catalogs = Object.assign(
  {},
  NO_CATALOGS,
  ...[ballJoints, brakes, hubs, tubes, materials].map(catalogOf),
);

function catalogOf(text: string): Partial<Catalogs> {
  const read = readCatalog(text, "shared/catalogs");
  if (!read.ok) throw new TypeError(`shippedCatalogs: ${read.issues[0]?.mend}`);
  return read.value;
}
