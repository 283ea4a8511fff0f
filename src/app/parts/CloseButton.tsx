import type { LayerName } from "../state/address.ts";
import { closeLayer } from "./layer.ts";

export type CloseButtonProps = {
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
