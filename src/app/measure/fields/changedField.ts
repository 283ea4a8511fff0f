import { createStore } from "zustand";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";

/** The field changed last that has a window, as a key; null = none, or its window was closed. */
export const changedField = createStore<{ readonly key: string | null }>()(() => ({ key: null }));

/** The blocks whose lengths and angles say how narrow and how wide a truck gets. */
const WINDOWED = ["knuckle", "wheel", "tire"];

/** Notes that a field of the setup was typed into, stepped or dragged. */
export function noteChanged(path: KeyPath): void {
  if (WINDOWED.includes(String(path[0]))) changedField.setState({ key: keyText(path) });
}

/** Closes the window of the field changed last. */
export function closeWindow(): void {
  changedField.setState({ key: null });
}
