import { Fold } from "../../parts/Fold.tsx";
import { WeightsBody } from "./WeightsBody.tsx";

/** What each variant's knuckle weighs, beside its picture. */
export function WeightsPanel() {
  return (
    <Fold id="weights" title="Weight" note="each variant’s knuckle, drawn and weighed">
      <WeightsBody />
    </Fold>
  );
}
