import { plottedLine } from "../../../studies/wording/packetTexts.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { usePrinting } from "./usePrinting.ts";

/** On paper alone: of which truck and at which pose plots are. */
export function PlottedOf() {
  const isPrinting = usePrinting();
  const setup = useWorkbench((s) => s.truck?.setup ?? null);
  const travel = useWorkbench((s) => (isPrinting ? s.travel : 0));
  const steer = useWorkbench((s) => (isPrinting ? s.steer : 0));
  if (!isPrinting || setup === null) return null;
  const today = new Date().toLocaleDateString("en-US", { dateStyle: "long" });
  return <p className="plotted-of">{plottedLine(setup, travel, steer, today)}</p>;
}
