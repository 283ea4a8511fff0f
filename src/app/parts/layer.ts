import { addressOf, hashOf, type LayerName, tellAddress } from "../state/address.ts";
import { notFetched, tell } from "../state/notice.ts";

/** What had the focus before the first layer came over it. */
let opener: HTMLElement | null = null;

/** Lays one over the workbench, or over another one; the browser's own Back takes it off again. Nothing where it is shown. */
export function openLayer(layer: LayerName): void {
  const { layer: shown } = addressOf(location.hash);
  if (shown === layer) return;
  if (shown === null && document.activeElement instanceof HTMLElement) opener = document.activeElement;
  history.pushState({ isLayer: true }, "", hashOf({ station: "show", layer }));
  tellAddress();
}

/** Takes a layer off and shows what it lay over; nothing where another one, or none, is shown. */
export function closeLayer(layer: LayerName): void {
  if (addressOf(location.hash).layer !== layer) return;
  if (isOwn(history.state)) {
    history.back();
    return;
  }
  history.replaceState(null, "", hashOf({ station: "show", layer: null }));
  tellAddress();
}

/** Takes off a layer that could not be fetched, and says so. */
export function layerMissing(layer: LayerName): void {
  tell(notFetched("This view"));
  closeLayer(layer);
}

/** Puts the focus back to where it was before any layer, once none is left. */
export function returnFocus(): void {
  if (addressOf(location.hash).layer !== null) return;
  opener?.focus();
  opener = null;
}

function isOwn(state: unknown): boolean {
  return typeof state === "object" && state !== null && "isLayer" in state;
}
