import { openLayer } from "../../parts/layer.ts";

/** Opens everything of a truck that is handed over on paper. */
export function PacketButton() {
  return (
    <button type="button" className="button" onClick={() => openLayer("packet")}>
      Print packet
    </button>
  );
}
