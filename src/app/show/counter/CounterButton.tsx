import { openLayer } from "../../parts/layer.ts";

/** Opens the view that is turned to a customer across the counter. */
export function CounterButton() {
  return (
    <button type="button" className="button" onClick={() => openLayer("counter")}>
      Counter view
    </button>
  );
}
