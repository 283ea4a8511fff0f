import { meshNamesIn } from "../../state/givenMeshes.ts";
import { commitTyped } from "../../state/typing.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { type ShareLink, shareLink } from "./shareLink.ts";

/** The link to what is on the board, at the page's own address; drafts are no part of it. */
export async function shareBoard(store: WorkbenchStore, page = location.href): Promise<ShareLink> {
  commitTyped();
  const { document, file, travel, steer } = store.getState();
  if (document === null) return { ok: false, mend: "there is no setup on the board yet" };
  return shareLink({ document, file, travel, steer }, page, meshNamesIn(document));
}
