import "./fieldWindow.css";
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { FieldWindowView } from "../../parts/window/FieldWindowView.tsx";
import { fieldText } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { changedField, closeWindow } from "./changedField.ts";

/** px. Room it wants under its field; with less it stands over it. As tall as it gets at most (`fieldWindow.css`). */
const ROOM = 232;

/** How little and how much a field may be, under it while it is the one that is being changed. */
export function FieldWindow({ path }: { path: KeyPath }) {
  const key = keyText(path);
  const isOpen = useStore(changedField, (s) => s.key === key);
  const isGiven = useWorkbench((s) => isOpen && fieldText(s, path) !== "");
  return isGiven ? <UnderField fieldKey={key} /> : null;
}

/** Lies over what follows the field, so that nothing of the form moves when it comes, grows or goes. */
function UnderField({ fieldKey }: { fieldKey: string }) {
  const truck = useWorkbench((s) => s.truck);
  const variant = useWorkbench((s) => s.good?.variant ?? null);
  const ref = useRef<HTMLElement>(null);
  const [isAbove, setIsAbove] = useState(false);
  // Looked at once, as it comes: later it would jump.
  useLayoutEffect(() => {
    const field = ref.current?.parentElement;
    if (field) setIsAbove(roomUnder(field) < ROOM && roomOver(field) >= ROOM);
  }, []);
  useEffect(() => closeElsewhere(ref.current?.parentElement ?? null), []);
  if (truck === null) return null;
  return (
    <section
      ref={ref}
      className="field-window"
      data-above={isAbove}
      aria-label="How far the field changed last can go"
    >
      <button
        type="button"
        className="window-close"
        aria-label="Close how far it can go"
        onClick={closeWindow}
      >
        ✕
      </button>
      <FieldWindowView truck={truck} variant={variant} field={fieldKey} />
    </section>
  );
}

/** px between the field and the foot of what can be seen of the form, the keyboard of a phone counted. */
function roomUnder(field: Element): number {
  const { offsetTop, height } = window.visualViewport ?? { offsetTop: 0, height: window.innerHeight };
  const form = scrolling(field)?.getBoundingClientRect().bottom ?? Number.POSITIVE_INFINITY;
  return Math.min(form, offsetTop + height) - field.getBoundingClientRect().bottom;
}

function roomOver(field: Element): number {
  const form = scrolling(field)?.getBoundingClientRect().top ?? 0;
  return field.getBoundingClientRect().top - Math.max(form, window.visualViewport?.offsetTop ?? 0);
}

/** What scrolls the form; null = the page. */
function scrolling(field: Element): Element | null {
  let at = field.parentElement;
  while (at && !/auto|scroll/.test(getComputedStyle(at).overflowY)) at = at.parentElement;
  return at === document.body || at === document.documentElement ? null : at;
}

/** Closes it as soon as the hand goes on to something else in the form, of which it hides a part. */
function closeElsewhere(field: Element | null): () => void {
  const look = ({ target }: Event) => {
    if (target instanceof Element && target.closest(".setup") !== null && !field?.contains(target))
      closeWindow();
  };
  const kinds = ["pointerdown", "focusin"] as const;
  for (const kind of kinds) document.addEventListener(kind, look, true);
  return () => {
    for (const kind of kinds) document.removeEventListener(kind, look, true);
  };
}
