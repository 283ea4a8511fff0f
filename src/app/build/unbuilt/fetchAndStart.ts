import { jumpTo } from "../../parts/JumpBar.tsx";
import { addressOf } from "../../state/address.ts";
import { notFetched, tell } from "../../state/notice.ts";
import { workbench } from "../../state/workbench.ts";

/** Starts with a usual knuckle, unless another truck has been put on the board while that was fetched. @returns whether it did */
export async function fetchAndStart(): Promise<boolean> {
  const { documentId, variant } = workbench.getState();
  const usual = await import("./startUsual.ts").catch(() => null);
  if (usual === null) {
    tell(notFetched("A usual knuckle"));
    return false;
  }
  const now = workbench.getState();
  if (now.documentId !== documentId || now.variant !== variant) return false;
  usual.startUsual();
  return true;
}

/** The same, and on to its drawings; nobody who has left meanwhile is taken there. */
export async function startAndDraw(): Promise<void> {
  const isStarted = await fetchAndStart();
  if (isStarted && addressOf(location.hash).station === "build")
    jumpTo("build", "[data-fold='drawings'] > summary");
}
