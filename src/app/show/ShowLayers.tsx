import { Late, LateBody } from "../parts/late.tsx";
import { layerMissing } from "../parts/layer.ts";
import { useLayer } from "../state/address.ts";

const COUNTER = new LateBody(async () => (await import("./counter/CounterView.tsx")).CounterView);
const SHEET = new LateBody(async () => (await import("./sheet/CustomerSheet.tsx")).CustomerSheet);

/** The counter view or the customer's sheet while it is asked for; loaded only then. */
export function ShowLayers() {
  const layer = useLayer();
  if (layer !== "counter" && layer !== "sheet") return null;
  const body = layer === "counter" ? COUNTER : SHEET;
  return <Late key={layer} of={body} props={{}} words="" onMissing={() => layerMissing(layer)} />;
}
