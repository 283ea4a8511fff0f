import { createStore, useStore } from "zustand";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { keyText } from "../../../setup/types/keyPath.ts";
import { FieldWindowView } from "../../parts/window/FieldWindowView.tsx";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** The field typed into last that has a window: one at a time has its bar, and keeps it until another one is typed into. */
const changed = createStore<{ readonly key: string | null }>()(() => ({ key: null }));

/** The blocks whose lengths and angles say how narrow and how wide a truck gets. */
const WINDOWED = ["knuckle", "wheel", "tire"];

/** Notes that a field of the setup was changed. */
export function noteChanged(path: KeyPath): void {
  if (WINDOWED.includes(String(path[0]))) changed.setState({ key: keyText(path) });
}

/** Under the field that is being changed: how little and how much it may be. */
export function FieldWindow({ path }: { path: KeyPath }) {
  const key = keyText(path);
  const isChanged = useStore(changed, (s) => s.key === key);
  const truck = useWorkbench((s) => (isChanged ? s.truck : null));
  const variant = useWorkbench((s) => s.good?.variant ?? null);
  if (truck === null) return null;
  return <FieldWindowView truck={truck} variant={variant} field={key} />;
}
