import "./fieldWindow.css";
import { type CSSProperties, useEffect, useLayoutEffect, useRef, useState } from "react";
import { useStore } from "zustand";
import { type KeyPath, keyText } from "../../../setup/types/keyPath.ts";
import { useSettled } from "../../parts/useSettled.ts";
import { FieldWindowView } from "../../parts/window/FieldWindowView.tsx";
import { fieldText } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { changedField, closeWindow } from "./changedField.ts";

/** px. As tall as it gets, and room for its bar and what it says first. */
const MOST = 232;
const LEAST = 104;
/** px. So wide a form has room for it beside its boxes. */
const BESIDE = 280;
const SPACE = 12;

/** How little and how much a field may be, under it while it is the one that is being changed. */
export function FieldWindow({ path }: { path: KeyPath }) {
  const key = keyText(path);
  const isOpen = useStore(changedField, (s) => s.key === key);
  const isGiven = useWorkbench((s) => isOpen && fieldText(s, path) !== "");
  return isGiven ? <UnderField fieldKey={key} /> : null;
}

/** Lies over the form, so that nothing of it moves when it comes, grows or goes; field and next field stay free where there is room. */
function UnderField({ fieldKey }: { fieldKey: string }) {
  // A search for each key would take its time from the curves beside the fields.
  const { truck } = useSettled(true);
  const ref = useRef<HTMLElement>(null);
  const [place, setPlace] = useState<CSSProperties>({ top: "100%", maxBlockSize: MOST });
  // Looked at once, as it comes: later it would jump.
  useLayoutEffect(() => {
    const field = ref.current?.parentElement;
    if (field) setPlace(placeOf(field));
  }, []);
  useEffect(() => closeElsewhere(ref.current?.parentElement ?? null), []);
  if (truck === null) return null;
  return (
    <section ref={ref} className="field-window" style={place} aria-label="Range of this field">
      <button type="button" className="window-close" aria-label="Close the range" onClick={closeWindow}>
        ✕
      </button>
      <FieldWindowView truck={truck} field={fieldKey} />
    </section>
  );
}

/**
 * Beside the boxes of a wide form; else at the foot of what is seen of it, past the next field; else over the field, the first of
 * it; else right under it.
 */
function placeOf(field: Element): CSSProperties {
  const { top, bottom, right } = field.getBoundingClientRect();
  const seen = seenOf(field);
  const line = field.querySelector(".field-line")?.getBoundingClientRect();
  if (line && right - line.right >= BESIDE) {
    // What follows a row of fields may be as wide as the form: it ends with them.
    let last = field;
    while (last.nextElementSibling?.matches(".field")) last = last.nextElementSibling;
    const end = Math.min(last.getBoundingClientRect().bottom, seen.bottom);
    const place = { left: line.width + SPACE, maxBlockSize: MOST };
    return end - top >= MOST ? { ...place, top: 0 } : { ...place, bottom: bottom - end };
  }
  const free = seen.bottom - Math.max(bottom, nextField(field)?.getBoundingClientRect().bottom ?? bottom);
  if (free >= LEAST) return { bottom: bottom - seen.bottom, maxBlockSize: Math.min(MOST, free) };
  if (top - seen.top >= LEAST) return { bottom: "100%", maxBlockSize: LEAST };
  return { top: "100%", maxBlockSize: Math.min(MOST, Math.max(LEAST, seen.bottom - bottom)) };
}

/** The field that the hand goes on to. */
function nextField(field: Element): Element | undefined {
  const all = [...(field.closest(".setup")?.querySelectorAll("[data-field]") ?? [])];
  return all.slice(all.indexOf(field) + 1).find((one) => !field.contains(one) && one.checkVisibility());
}

/** px. What can be seen of the form: within what scrolls it, a phone's keyboard and what stands at the window's foot counted. */
function seenOf(field: Element): { readonly top: number; readonly bottom: number } {
  const { offsetTop, height } = window.visualViewport ?? { offsetTop: 0, height: window.innerHeight };
  const scroller = scrolling(field)?.getBoundingClientRect();
  const feet = [".stations", ".curve-dock"].flatMap((one) => {
    const at = document.querySelector(one)?.getBoundingClientRect().top ?? 0;
    return at > 0.5 * window.innerHeight ? [at] : [];
  });
  const form = field.closest(".setup")?.getBoundingClientRect().top ?? 0;
  return {
    top: Math.max(scroller?.top ?? 0, form, offsetTop),
    bottom: Math.min(scroller?.bottom ?? Number.POSITIVE_INFINITY, offsetTop + height, ...feet),
  };
}

/** What scrolls the form; null = the page. */
function scrolling(field: Element): Element | null {
  let at = field.parentElement;
  while (at && !/auto|scroll/.test(getComputedStyle(at).overflowY)) at = at.parentElement;
  return at === document.body || at === document.documentElement ? null : at;
}

/** Ends with the field: as soon as hand or keyboard goes on to anything else of the page. */
function closeElsewhere(field: Element | null): () => void {
  const look = ({ target }: Event) => {
    if (target instanceof Node && !field?.contains(target)) closeWindow();
  };
  const kinds = ["pointerdown", "focusin"] as const;
  for (const kind of kinds) document.addEventListener(kind, look, true);
  return () => {
    for (const kind of kinds) document.removeEventListener(kind, look, true);
  };
}
