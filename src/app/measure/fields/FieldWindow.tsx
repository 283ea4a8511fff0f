import "./fieldWindow.css";
import { useEffect, useLayoutEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { useSettled } from "../../parts/useSettled.ts";
import { FieldWindowView } from "../../parts/window/FieldWindowView.tsx";
import { fieldText } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { changedField, closeWindow } from "./changedField.ts";

/** px. As tall as it gets, and room for its bar and what it says first: with less under its field it may stand over it. */
const MOST = 232;
const LEAST = 130;

/** How little and how much a field may be, under it while it is the one that is being changed. */
export function FieldWindow({ path }: { path: KeyPath }) {
  const key = keyText(path);
  const isOpen = useStore(changedField, (s) => s.key === key);
  const isGiven = useWorkbench((s) => isOpen && fieldText(s, path) !== "");
  return isGiven ? <UnderField fieldKey={key} /> : null;
}

/** Lies over what follows the field, so that nothing of the form moves when it comes, grows or goes. */
function UnderField({ fieldKey }: { fieldKey: string }) {
  // A search for each key would take its time from the curves beside the fields.
  const { truck, good } = useSettled(true);
  const ref = useRef<HTMLElement>(null);
  const [place, setPlace] = useState({ isAbove: false, room: MOST });
  // Looked at once, as it comes: later it would jump.
  useLayoutEffect(() => {
    const field = ref.current?.parentElement;
    if (field) setPlace(placeOf(field));
  }, []);
  useEffect(() => closeElsewhere(ref.current?.parentElement ?? null), []);
  if (truck === null) return null;
  return (
    <section
      ref={ref}
      className="field-window"
      data-above={place.isAbove}
      style={{ maxBlockSize: place.room }}
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
      <FieldWindowView
        truck={truck}
        variant={good?.variant ?? null}
        field={fieldKey}
        whole={good?.document}
      />
    </section>
  );
}

/** Under the field where there is room for the first of it, else where there is more. */
function placeOf(field: Element): { readonly isAbove: boolean; readonly room: number } {
  const { top, bottom } = field.getBoundingClientRect();
  const seen = seenOf(field);
  const [under, over] = [seen.bottom - bottom, top - seen.top];
  const isAbove = under < LEAST && over > under;
  return { isAbove, room: Math.min(MOST, Math.max(LEAST, isAbove ? over : under)) };
}

/** px. What can be seen of the form: within what scrolls it, a phone's keyboard and the steps at its foot counted. */
function seenOf(field: Element): { readonly top: number; readonly bottom: number } {
  const { offsetTop, height } = window.visualViewport ?? { offsetTop: 0, height: window.innerHeight };
  const form = scrolling(field)?.getBoundingClientRect();
  const steps = document.querySelector(".stations")?.getBoundingClientRect().top ?? 0;
  const foot = steps > 0.5 * window.innerHeight ? steps : Number.POSITIVE_INFINITY;
  return {
    top: Math.max(form?.top ?? 0, offsetTop),
    bottom: Math.min(form?.bottom ?? Number.POSITIVE_INFINITY, offsetTop + height, foot),
  };
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
