import type { Address } from "../../state/address.ts";
import { counter } from "../../state/counterStore.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { readShareLink } from "./shareLink.ts";

/**
 * Puts the setup that a link's hash holds on the board, as a new one: what was there stays in the list, and undo brings
 * it back. A link that cannot be read is refused with its reason.
 * @param readLink what reads it
 * @param isAsked whether the link is still asked for once it is read: nobody's work is taken off the board by one that was left
 * @returns where in the page it was shared from; null where the hash is to stay as it is: it is no shared setup, or one that what
 * reads it is not here for, so that a reload tries it again
 */
export async function openSharedLink(
  store: WorkbenchStore,
  hash: string,
  readLink: typeof readShareLink = readShareLink,
  isAsked: () => boolean = () => true,
): Promise<Address | null> {
  const read = await readLink(hash);
  if (read === null || !isAsked()) return null;
  const { openDocument, refuse, setAligned } = store.getState();
  if (read.ok) {
    const { counter: choice, ...shared } = read.shared;
    openDocument(shared);
    if (choice) {
      const { isAligned, ...chosen } = choice;
      setAligned(isAligned);
      counter.setState(chosen);
    }
    return read.address;
  }
  refuse({ file: "shared link", key: "", value: "", mend: read.mend });
  return read.isUnread ? null : read.address;
}
