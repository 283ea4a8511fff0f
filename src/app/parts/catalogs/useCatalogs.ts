import { useMemo } from "react";
import { useStore } from "zustand";
import type { Catalogs } from "../../../setup/catalogs/readCatalog.ts";
import { givenCatalogs } from "../../state/givenCatalogs.ts";
import { SHIPPED } from "./shippedCatalogs.ts";

/** The program's own catalogs, each replaced by the one given of its kind. */
export function useCatalogs(): Catalogs {
  const given = useStore(givenCatalogs, (s) => s.given);
  return useMemo(
    () => Object.assign({}, SHIPPED, ...Object.values(given).map(({ catalogs }) => catalogs)) as Catalogs,
    [given],
  );
}
