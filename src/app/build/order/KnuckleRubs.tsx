import { checkOnPaperSentence } from "../../../studies/wording/drawingWords.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useCheckNow } from "../../parts/useSettled.ts";
import { goToStation } from "../../state/address.ts";
import type { Truck } from "../../state/truck.ts";
import { useWaitingFor } from "../../state/useWaitingFor.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

/** At what the shop makes a knuckle by: that with it the truck rubs, and the way to where that is told. Nothing while it does not. */
export function KnuckleRubs({ truck }: { truck: Truck }) {
  const waiting = useWaitingFor();
  const report = useCheckNow(waiting ? null : truck)?.answer ?? null;
  const format = useFormat();
  if (report?.verdict !== "rubs") return null;
  return (
    <p className="order-ahead knuckle-rubs" role="status">
      <StateMark word="rubs" /> {keepTogether(checkOnPaperSentence(report, truck.model, format))}{" "}
      <button type="button" className="button" onClick={() => goToStation("clear")}>
        To Clear
      </button>
    </p>
  );
}
