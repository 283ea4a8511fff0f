import type { WorkbenchStore } from "../state/workbenchStore.ts";

/**
 * The keys every program has, with Ctrl or Command: Z undoes, Shift+Z and Y redo, S saves. In a field that text is typed
 * into, Z and Y are the field's own, except where the board keeps what is typed: there they are the board's
 * (`data-board-undo`).
 * @returns stops listening
 */
export function shortcutKeys(store: WorkbenchStore, target: Window, save: () => void): () => void {
  const listen = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return;
    const { undo, redo } = store.getState();
    const key = event.key.toLowerCase();
    const action =
      key === "s"
        ? save
        : isTextField(event.target)
          ? null
          : key === "z"
            ? event.shiftKey
              ? redo
              : undo
            : key === "y"
              ? redo
              : null;
    if (!action) return;
    event.preventDefault();
    action();
  };
  target.addEventListener("keydown", listen);
  return () => target.removeEventListener("keydown", listen);
}

/** Kinds of input that hold no text of their own to undo. */
const NO_TEXT = ["range", "checkbox", "radio", "button", "file", "color"];

function isTextField(element: EventTarget | null): boolean {
  if (element instanceof Element && element.closest("[data-board-undo]") !== null) return false;
  if (element instanceof HTMLInputElement) return !NO_TEXT.includes(element.type);
  return (
    element instanceof HTMLTextAreaElement || (element instanceof HTMLElement && element.isContentEditable)
  );
}
