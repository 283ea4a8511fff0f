import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { removeAt } from "../../../setup/reading/setAt.ts";
import { chosenPair, counter } from "../../state/counterStore.ts";
import { meshNamesIn } from "../../state/givenMeshes.ts";
import type { TypedDocument } from "../../state/typedDocument.ts";
import { commitTyped } from "../../state/typing.ts";
import type { WorkbenchStore } from "../../state/workbenchStore.ts";
import { type ShareLink, shareLink } from "./shareLink.ts";

/** Blocks that the counter asks nothing of: without them the link may be short enough to be scanned. */
const LEFT_OUT = ["$schema", "order", "build", "jig", "asBuilt", "loads", "masses", "floor", "roll"] as const;

/** The link to the two trucks at the counter, at the page's own address: with their height and the hub face tried. */
export async function shareComparison(store: WorkbenchStore, page = location.href): Promise<ShareLink> {
  commitTyped();
  const { document, file, isAligned, good } = store.getState();
  if (document === null) return { ok: false, mend: "no setup is open yet" };
  const choice = counter.getState();
  const [first, second] = chosenPair(choice, variantNames(document), good?.variant ?? null);
  const shared = {
    document: comparedOf(document, [first, second]),
    file,
    counter: { first, second, travel: choice.travel, hubFace: choice.hubFace, isAligned },
  };
  return shareLink(shared, page, meshNamesIn(document));
}

/** The document with those variants alone, and what the counter shows of it. */
function comparedOf(document: TypedDocument, names: readonly (string | null)[]): TypedDocument {
  const bare = LEFT_OUT.reduce<unknown>((left, key) => removeAt(left, [key]), document) as TypedDocument;
  const { variants } = bare;
  if (!Array.isArray(variants)) return bare;
  const kept = variants.filter((one: unknown) =>
    names.includes((one as { readonly name: string } | null)?.name ?? ""),
  );
  return { ...bare, variants: kept };
}

/** The link to what is on the board, at the page's own address; drafts are no part of it. */
export async function shareBoard(store: WorkbenchStore, page = location.href): Promise<ShareLink> {
  commitTyped();
  const { document, file, travel, steer } = store.getState();
  if (document === null) return { ok: false, mend: "no setup is open yet" };
  return shareLink({ document, file, travel, steer }, page, meshNamesIn(document));
}
