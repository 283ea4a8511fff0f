import { isMeshName } from "../../../files/readMesh.ts";
import { MAX_FILE_CHARACTERS } from "../../../setup/reading/limits.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { isCatalogText, takeCatalog } from "../../state/givenCatalogs.ts";
import { GivenMeshes } from "../../state/givenMeshes.ts";
import { tell } from "../../state/notice.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { readMeshFile, UNREADABLE } from "../../work/readMeshFile.ts";

/**
 * Opens the files that a person picked or dropped together: a setup with its mesh files, or mesh files alone for
 * the setup opened before; or a catalog. What cannot be read is refused with its reason.
 * @param goTo leads to the part that a scan became, where it is said how it stands
 */
export async function openFiles(
  store: WorkbenchStore,
  files: readonly File[],
  goTo: (part: KeyPath) => void = () => {},
): Promise<void> {
  const { openText, addMeshes, refuse } = store.getState();
  const meshFiles = files.filter((file) => isMeshName(file.name));
  const [setup, another] = files.filter((file) => !isMeshName(file.name));
  const refuseFile = (file: File, value: string, mend: string) =>
    refuse({ file: file.name, key: "", value, mend });
  if (another) {
    refuseFile(
      another,
      "",
      `only one setup can be opened, and ${setup?.name} is another; pick one, with its mesh files`,
    );
    return;
  }
  // UTF-8 takes at most 3 bytes for each UTF-16 character: more bytes than that is more characters than allowed.
  if (setup && setup.size > 3 * MAX_FILE_CHARACTERS) {
    refuseFile(setup, `${setup.size} bytes`, "this is too large to be a setup; pick a setup file");
    return;
  }
  const meshes = await readMeshFiles(meshFiles);
  if (!setup) {
    if (meshFiles.length === 0) return;
    const before = partCount(store);
    const { documentId } = store.getState();
    addMeshes(meshes);
    const added = partCount(store) - before;
    // What they completed is another truck, with its parts as they were.
    if (added === 0 || store.getState().documentId !== documentId) return;
    tell(
      added === 1
        ? "The scan is a body part of this truck now: say in which unit it is and where it stands."
        : `The ${added} scans are body parts of this truck now: say in which unit each is and where it stands.`,
    );
    goTo(["truck", "body", before]);
    return;
  }
  const text = await setup.text().catch(() => null);
  if (text === null) refuseFile(setup, "", UNREADABLE);
  else if (isCatalogText(text)) takeCatalog(store, text, setup.name);
  else openText(text, setup.name, meshes);
}

function partCount(store: WorkbenchStore): number {
  const body = valueAt(store.getState().document, ["truck", "body"]);
  return Array.isArray(body) ? body.length : 0;
}

/** Reads mesh files; one that cannot be read is among them, refused with its reason. */
export async function readMeshFiles(files: readonly File[]): Promise<GivenMeshes> {
  return new GivenMeshes(new Map(await Promise.all(files.map(readMeshFile))));
}
