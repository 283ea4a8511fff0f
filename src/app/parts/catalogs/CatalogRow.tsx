import "./catalogRow.css";
import { useRef } from "react";
import { useStore } from "zustand";
import type { CatalogKind } from "../../../setup/catalogs/catalogDocument.ts";
import { CATALOG_NAMES, dropCatalog, givenCatalogs, takeCatalog } from "../../state/givenCatalogs.ts";
import { workbench } from "../../state/workbench.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { UNREADABLE } from "../../work/readMeshFile.ts";

/** Which catalogs are gone by, and a way to give one's own. */
export function CatalogRow() {
  const input = useRef<HTMLInputElement>(null);
  const given = useStore(givenCatalogs, (s) => s.given);
  const own = Object.entries(given) as [CatalogKind, { readonly file: string }][];
  return (
    <div className="catalog-row">
      <p>
        {own.length === 0
          ? "Catalogs: the program’s own; parts and tubes are invented, materials as published."
          : `Catalogs: ${own.map(([kind, { file }]) => `${CATALOG_NAMES[kind]} from ${file}`).join(", ")}; else the program’s own.`}
      </p>
      <button type="button" className="small-button" onClick={() => input.current?.click()}>
        Catalog…
      </button>
      {own.map(([kind]) => (
        <button key={kind} type="button" className="small-button" onClick={() => dropCatalog(kind)}>
          Back to the program’s {CATALOG_NAMES[kind]}
        </button>
      ))}
      <input
        ref={input}
        type="file"
        multiple
        accept=".json,application/json"
        aria-label="Catalog file"
        hidden
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = "";
          void takeCatalogs(workbench, files);
        }}
      />
    </div>
  );
}

/** Uses catalog files that a person picked; one that cannot be read is refused with its reason. */
async function takeCatalogs(store: WorkbenchStore, files: readonly File[]): Promise<void> {
  for (const file of files) {
    const text = await file.text().catch(() => null);
    if (text === null) store.getState().refuse({ file: file.name, key: "", value: "", mend: UNREADABLE });
    else takeCatalog(store, text, file.name);
  }
}
