import "./layerDialog.css";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { createPortal } from "react-dom";
import type { LayerName } from "../state/address.ts";
import { closeLayer, returnFocus } from "./layer.ts";
import { UndoneNote } from "./UndoneNote.tsx";
import { usePageMark } from "./usePageMark.ts";

export type LayerDialogProps = {
  name: LayerName;
  /** Id of the heading that names it. */
  labelledBy: string;
  children: ReactNode;
};

/**
 * A window over the whole workbench: the browser keeps the focus inside it and closes it on Escape. It stands beside
 * the workbench in the page, so that one can be printed without the other.
 */
export function LayerDialog({ name, labelledBy, children }: LayerDialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  usePageMark("layer", name);
  useLayoutEffect(() => {
    const dialog = ref.current!;
    dialog.showModal();
    return () => {
      dialog.close();
      returnFocus();
    };
  }, []);
  return createPortal(
    <dialog
      ref={ref}
      className={`layer layer-${name}`}
      aria-labelledby={labelledBy}
      onCancel={(event) => {
        // A file picker that is called off says so through here as well.
        if (event.target !== event.currentTarget) return;
        event.preventDefault();
        closeLayer(name);
      }}
      onClose={(event) => {
        if (!event.currentTarget.open) closeLayer(name);
      }}
    >
      {children}
      <UndoneNote />
    </dialog>,
    document.body,
  );
}

type CloseButtonProps = {
  name: LayerName;
};

/** Leaves a layer, as Escape does. */
export function CloseButton({ name }: CloseButtonProps) {
  return (
    <button type="button" className="button layer-close" onClick={() => closeLayer(name)}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path d="M2 2L14 14M14 2L2 14" />
      </svg>
      Close
    </button>
  );
}
