import { useSyncExternalStore } from "react";

/** What can lie over the whole workbench. Its name is the page's hash, so that it can be kept as a bookmark. */
export type LayerName = "counter" | "sheet";

const NAMES: readonly LayerName[] = ["counter", "sheet"];
const listeners = new Set<() => void>();

/** What had the focus before the first layer came over it. */
let opener: HTMLElement | null = null;

/** The layer now over the workbench; null = none. */
function currentLayer(): LayerName | null {
  return NAMES.find((name) => location.hash === `#${name}`) ?? null;
}

/** Lays one over the workbench, or over the layer there is; the browser's own Back takes it off again. */
export function openLayer(name: LayerName): void {
  if (currentLayer() === null && document.activeElement instanceof HTMLElement)
    opener = document.activeElement;
  history.pushState({ isLayer: true }, "", `#${name}`);
  tell();
}

/** Takes a layer off and shows what it lay over; nothing where another one, or none, is shown. */
export function closeLayer(name: LayerName): void {
  if (currentLayer() !== name) return;
  if (isOwn(history.state)) {
    history.back();
    return;
  }
  history.replaceState(null, "", location.pathname + location.search);
  tell();
}

/** Puts the focus back to where it was before any layer, once none is left. */
export function returnFocus(): void {
  if (currentLayer() !== null) return;
  opener?.focus();
  opener = null;
}

/** Follows the layer shown. */
export function useLayer(): LayerName | null {
  return useSyncExternalStore(follow, currentLayer);
}

function isOwn(state: unknown): boolean {
  return typeof state === "object" && state !== null && "isLayer" in state;
}

function tell(): void {
  for (const listener of listeners) listener();
}

function follow(listener: () => void): () => void {
  listeners.add(listener);
  addEventListener("popstate", listener);
  addEventListener("hashchange", listener);
  return () => {
    listeners.delete(listener);
    removeEventListener("popstate", listener);
    removeEventListener("hashchange", listener);
  };
}
