import { useSyncExternalStore } from "react";

/** The steps of the job, in their order; each is a place of its own in the page. */
export const STATIONS = ["measure", "clear", "choose", "build", "show"] as const;
export type Station = (typeof STATIONS)[number];

/** What can lie over the whole workbench; all are for a customer. */
export const LAYERS = ["counter", "sheet", "packet"] as const;
export type LayerName = (typeof LAYERS)[number];

/** Where in the page somebody is: kept in the page's hash, so that back, forward, reload and a bookmark keep it. */
export interface Address {
  readonly station: Station;
  readonly layer: LayerName | null;
}

/** Where somebody is who has not said. */
const START: Address = { station: "clear", layer: null };
const listeners = new Set<() => void>();

/** Reads a hash, with or without its `#`: `clear`, `show/counter`; a layer's name alone, as older bookmarks have it. */
export function addressOf(hash: string): Address {
  const [first = "", second] = hash.replace(/^#/, "").split("/");
  const alone = LAYERS.find((layer) => layer === first);
  if (alone) return { station: "show", layer: alone };
  const station = STATIONS.find((one) => one === first);
  if (!station) return START;
  return { station, layer: station === "show" ? (LAYERS.find((layer) => layer === second) ?? null) : null };
}

/** The hash of an address, with its `#`. */
export function hashOf({ station, layer }: Address): string {
  return layer === null ? `#${station}` : `#${station}/${layer}`;
}

/** Goes to a station; the browser's own Back returns from it. Nothing where it is shown already. */
export function goToStation(station: Station): void {
  const now = addressOf(location.hash);
  if (now.station === station && now.layer === null) return;
  history.pushState(null, "", hashOf({ station, layer: null }));
  tellAddress();
}

/** Tells whoever follows that the hash was changed by the page itself, of which the browser tells nothing. */
export function tellAddress(): void {
  for (const listener of listeners) listener();
}

/** Follows the station shown. */
export function useStation(): Station {
  return useSyncExternalStore(followAddress, () => addressOf(location.hash).station);
}

/** Follows the layer shown; null = none. */
export function useLayer(): LayerName | null {
  return useSyncExternalStore(followAddress, () => addressOf(location.hash).layer);
}

/** Calls the listener whenever somebody goes elsewhere in the page. @returns ends it */
export function followAddress(listener: () => void): () => void {
  listeners.add(listener);
  addEventListener("popstate", listener);
  addEventListener("hashchange", listener);
  return () => {
    listeners.delete(listener);
    removeEventListener("popstate", listener);
    removeEventListener("hashchange", listener);
  };
}
