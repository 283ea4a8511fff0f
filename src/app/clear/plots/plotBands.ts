import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { Span } from "./plotRange.ts";

/** What is wanted of each plot's curves, by the plot's id; mm, radians. An end that is left out is open. */
type Bands = Readonly<Record<string, Partial<Span>>>;

const KEY = "wellsweep plot bands";
const NONE: Partial<Span> = {};

const bands = createStore<{ readonly of: Bands }>()(() => ({ of: kept() }));

/** What somebody wants of a plot; the very same until it is changed. */
export function useBand(id: string): Partial<Span> {
  return useStore(bands, ({ of }) => of[id] ?? NONE);
}

/** Wants this of a plot from now on, also after the page was closed. */
export function setBand(id: string, band: Partial<Span>): void {
  const { [id]: _, ...others } = bands.getState().of;
  const of = band.low === undefined && band.high === undefined ? others : { ...others, [id]: band };
  bands.setState({ of });
  try {
    localStorage.setItem(KEY, JSON.stringify(of));
  } catch {
    // A browser may keep nothing for a page: then the band lasts as long as the page.
  }
}

function kept(): Bands {
  try {
    return readBands(JSON.parse(localStorage.getItem(KEY) ?? "{}"));
  } catch {
    return {};
  }
}

/** Bands from storage, which may hold anything. */
export function readBands(stored: unknown): Bands {
  if (typeof stored !== "object" || stored === null) return {};
  return Object.fromEntries(
    Object.entries(stored).flatMap(([id, band]) => {
      const { low, high } = (band ?? {}) as Record<string, unknown>;
      const ends = { ...finite("low", low), ...finite("high", high) };
      return Object.keys(ends).length > 0 ? [[id, ends]] : [];
    }),
  );
}

function finite(key: "low" | "high", value: unknown): Partial<Span> {
  return typeof value === "number" && Number.isFinite(value) ? { [key]: value } : {};
}
