import type { Station } from "../../state/address.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { readShareLink } from "./shareLink.ts";

/**
 * Puts the setup that a link's hash holds on the board, as a new one: what was there stays in the list, and undo brings
 * it back. A link that cannot be read is refused with its reason.
 * @returns the station it was shared from; null where the hash is no shared setup, readable or not
 */
export async function openSharedLink(store: WorkbenchStore, hash: string): Promise<Station | null> {
  const read = await readShareLink(hash);
  if (read === null) return null;
  const { openDocument, refuse } = store.getState();
  if (read.ok) openDocument(read.shared);
  else refuse({ file: "shared link", key: "", value: "", mend: read.mend });
  return read.station;
}
