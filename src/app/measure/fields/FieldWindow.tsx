import { useEffect } from "react";
import { createStore, useStore } from "zustand";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { FieldWindowView } from "../../parts/window/FieldWindowView.tsx";
import { fieldText } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** The field typed into last that has a window; null = none, or its window was closed. */
const changed = createStore<{ readonly path: KeyPath | null }>()(() => ({ path: null }));

/** The blocks whose lengths and angles say how narrow and how wide a truck gets. */
const WINDOWED = ["knuckle", "wheel", "tire"];

/** Notes that a length or an angle of the setup was changed. */
export function noteChanged(path: KeyPath): void {
  if (WINDOWED.includes(String(path[0]))) changed.setState({ path });
}

/**
 * How little and how much the field that is being changed may be. It lies over the foot of the form, so that nothing of the form
 * moves when it comes, grows or goes.
 */
export function FieldWindow() {
  const path = useStore(changed, (s) => s.path);
  const isGiven = useWorkbench((s) => path !== null && fieldText(s, path) !== "");
  const truck = useWorkbench((s) => (isGiven ? s.truck : null));
  const variant = useWorkbench((s) => s.good?.variant ?? null);
  useEffect(() => (path === null ? undefined : closeElsewhere(path)), [path]);
  if (truck === null || path === null) return null;
  return (
    <section className="window-foot" aria-label="How far the field changed last can go">
      <button
        type="button"
        className="window-close"
        aria-label="Close how far it can go"
        onClick={() => changed.setState({ path: null })}
      >
        ✕
      </button>
      <FieldWindowView truck={truck} variant={variant} field={keyText(path)} />
    </section>
  );
}

/** Closes it as soon as the hand goes on to something else in the form, of which it may hide a part. */
function closeElsewhere(path: KeyPath): () => void {
  const own = `.window-foot, [data-field="${path.join(".")}"]`;
  const look = ({ target }: Event) => {
    if (!(target instanceof Element) || target.closest(".setup") === null) return;
    if (target.closest(own) === null) changed.setState({ path: null });
  };
  const kinds = ["pointerdown", "focusin"] as const;
  for (const kind of kinds) document.addEventListener(kind, look, true);
  return () => {
    for (const kind of kinds) document.removeEventListener(kind, look, true);
  };
}
