import { takeCatalog } from "../../state/givenCatalogs.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { UNREADABLE } from "../../work/readMeshFile.ts";

/** Uses catalog files that a person picked; one that cannot be read is refused with its reason. */
export async function takeCatalogs(store: WorkbenchStore, files: readonly File[]): Promise<void> {
  for (const file of files) {
    const text = await file.text().catch(() => null);
    if (text === null) store.getState().refuse({ file: file.name, key: "", value: "", mend: UNREADABLE });
    else takeCatalog(store, text, file.name);
  }
}
