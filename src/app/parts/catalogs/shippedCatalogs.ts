import { useMemo } from "react";
import { useStore } from "zustand";
import ballJoints from "../../../../shared/catalogs/ball-joints.json?raw";
import brakes from "../../../../shared/catalogs/brakes.json?raw";
import hubs from "../../../../shared/catalogs/hubs.json?raw";
import materials from "../../../../shared/catalogs/materials.json?raw";
import tubes from "../../../../shared/catalogs/tubes.json?raw";
import { type Catalogs, NO_CATALOGS, readCatalog } from "../../../setup/catalogs/readCatalog.ts";
import { givenCatalogs } from "../../state/givenCatalogs.ts";

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

type Given = ReturnType<typeof givenCatalogs.getState>["given"];

function withGiven(given: Given): Catalogs {
  return Object.assign({}, SHIPPED, ...Object.values(given).map(({ catalogs }) => catalogs)) as Catalogs;
}

/** The program's own catalogs, each replaced by the one given of its kind. */
export function useCatalogs(): Catalogs {
  const given = useStore(givenCatalogs, (s) => s.given);
  return useMemo(() => withGiven(given), [given]);
}

/** The same, asked once. */
export function currentCatalogs(): Catalogs {
  return withGiven(givenCatalogs.getState().given);
}
